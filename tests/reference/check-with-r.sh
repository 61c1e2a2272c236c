#!/bin/sh
# Computes every figure of results.csv again with R and fails if a stored value is no longer what R gives, beyond the
# digits that README.md trusts. Nothing is written here: the work is done in a temporary copy.
#
# Debian 12 packages: r-base-core r-cran-survival r-cran-mass r-cran-boot r-cran-nlme r-cran-lme4 r-cran-statmod
#   r-cran-strucchange r-cran-metafor r-cran-metadat, and python3 with the time zone data (tzdata).
# A package that is not installed is reported by name, the figures that need it are counted as not run again, and the check
# goes on with the others. python3-scipy and python3-statsmodels are wanted only for section 13, which is then left out.
set -eu

here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cp -r "$here/data" "$here/lib.R" "$here/reference-values.R" "$here/reference-values.py" "$work/"
cd "$work"

command -v Rscript >/dev/null || { echo "Rscript is not installed (Debian: r-base-core)" >&2; exit 2; }
Rscript --vanilla "$here/rerun.R" "$here/results.csv"
