# Runs reference-values.R statement by statement in the current (temporary) folder and compares what it gives with a stored
# results.csv. Called by check-with-r.sh. Ends with status 1 on any difference beyond the digits trusted, on any figure that
# is missing without a missing package to explain it, and on data files that no longer equal the packaged data.

# Everything of this file lives inside a function: the statements run in the global environment and reuse short names.
check <- function() {
  stored <- read.csv(commandArgs(TRUE)[1], colClasses = "character")

  # Which data sets need which package, beyond base R.
  needs <- list(survival = c("2.1", "2.2", "3.3", "3.4"), MASS = c("2.1", "2.2", "3.4", "6.5"), metafor = c("4.1", "4.2", "4.3"),
                metadat = c("4.1", "4.2", "4.3"), lme4 = "4.2", statmod = "4.2", strucchange = "8.2", boot = character(0), nlme = character(0))
  here <- vapply(names(needs), requireNamespace, logical(1), quietly = TRUE)
  absent <- names(needs)[!here]
  excused <- c(unlist(needs[absent]), if (length(absent) > 0) "13.1")
  for (p in c("survival", "metafor", "lme4", "MASS")) if (here[p]) suppressPackageStartupMessages(library(p, character.only = TRUE))

  # Debian's own interpreter, which sees the Debian packages.
  interpreter <- if (file.exists("/usr/bin/python3")) "/usr/bin/python3" else "python3"

  # Must be made again by Python below; the stored copy would hide that it was not.
  unlink("data/timezones.csv")
  python <- function(code) suppressWarnings(system2(interpreter, c("-c", shQuote(code)), stdout = FALSE, stderr = FALSE)) == 0
  if (!python("import zoneinfo")) excused <- c(excused, "10.1")
  second <- python("import scipy, statsmodels")

  statements <- parse("reference-values.R", keep.source = FALSE)
  changed <- character(0); failed <- character(0)
  for (s in as.list(statements)) {
    text <- paste(deparse(s), collapse = " ")
    if (grepl("^(suppressPackageStartupMessages|finish)\\(", text)) next
    if (grepl("^system2\\(", text)) { suppressWarnings(system2(interpreter, "reference-values.py", stderr = if (second) "" else FALSE)); next }
    suppressWarnings(suppressMessages(tryCatch(eval(s, globalenv()), error = function(e) failed <<- c(failed, paste0(substr(text, 1, 90), ": ", conditionMessage(e))))))
    if (grepl("^D <- ", text)) {
      # Read the file, and where the data also come with a package, see that both are still the same.
      assign("D", function(file, expr) {
        kept <- read.csv(file.path("data", file), na.strings = "NA")
        fresh <- tryCatch(expr, error = function(e) NULL)
        if (!is.null(fresh)) {
          again <- tempfile(); write.csv(fresh, again, row.names = FALSE)
          if (!isTRUE(all.equal(kept, read.csv(again, na.strings = "NA"), check.attributes = FALSE))) changed <<- c(changed, file)
        }
        kept
      }, globalenv())
    }
  }

  again <- do.call(rbind, get(".res", globalenv()))
  key <- function(d) { k <- paste(d$dataset, d$quantity, sep = " / "); paste0(k, " #", ave(seq_along(k), k, FUN = seq_along)) }
  stored$key <- key(stored); again$key <- key(again)

  # Digits to trust, as README.md gives them.
  digits <- function(d, q) {
    if (d %in% c("1.3", "1.4") && grepl("MLE|CI", q) && !grepl("tight", q)) return(4)
    if (d == "3.3" && grepl("survfit", q)) return(3)
    if (d == "4.2" && grepl("logistic|independent", q)) return(7)
    if (d == "5.5" && grepl("profile", q)) return(4)
    if (d == "6.3" && grepl("normal approximation", q) && !grepl("\\[p\\]", q)) return(4)
    if (d == "9.1" && grepl("nll|AIC|FIXED|those|^log ", q)) return(9)
    if (d == "9.1") return(5)
    if (grepl("Cox|survreg|ML|PM|EB|mass|NPMLE", q) || grepl("^5", d)) return(9)
    11
  }
  same <- function(a, b, d, q) {
    a <- suppressWarnings(as.numeric(a)); b <- suppressWarnings(as.numeric(b))
    if (is.na(a) || is.na(b)) return(is.na(a) && is.na(b))
    if (is.infinite(a) || is.infinite(b)) return(a == b)

    # Rounding noise about zero, and how near a fit came to certified digits, have no digits of their own.
    if (grepl("kkt|largest difference|largest relative|LRE", q) || (d == "9.1" && abs(a) < 1e-12)) return(TRUE)
    abs(a - b) <= 10^-digits(d, q) * max(abs(a), abs(b), if (a == 0 || b == 0) 1 else 0)
  }

  m <- match(stored$key, again$key)
  missing <- stored[is.na(m), ]; unexcused <- missing[!(missing$dataset %in% excused), ]
  found <- stored[!is.na(m), ]; now <- again$value[m[!is.na(m)]]
  agrees <- mapply(same, found$value, now, found$dataset, found$quantity)
  added <- setdiff(again$key, stored$key)

  for (p in absent) cat("not rerun: ", p, " is not installed (not in Debian, or left out)\n", sep = "")
  if (!second) cat("not rerun: the second library of section 13 (python3-scipy, python3-statsmodels); its stored values were compared\n")
  cat(nrow(stored), "figures stored;", nrow(found), "run again;", sum(agrees), "agree;", nrow(missing), "not run again\n")
  for (i in which(!agrees)) cat("DIFFERS: ", found$key[i], ": stored ", found$value[i], ", R now gives ", now[i], "\n", sep = "")
  for (k in unexcused$key) cat("MISSING: ", k, "\n", sep = "")
  for (k in added) cat("NEW, not stored: ", k, "\n", sep = "")
  for (f in unique(changed)) cat("DATA: data/", f, " no longer equals the packaged data\n", sep = "")
  if (nrow(unexcused) > 0) for (f in failed) cat("ERROR: ", f, "\n", sep = "")
  quit(status = if (any(!agrees) || nrow(unexcused) > 0 || length(added) > 0 || length(changed) > 0) 1 else 0)
}
check()
