"""The yardstick for reading: one table read with pandas, its times understood, the counts printed."""
import sys

import pandas as pd

table = pd.read_csv(sys.argv[1], parse_dates=[0])
print(len(table), table["spo2"].notna().sum(), table.iloc[:, 0].min(), table.iloc[:, 0].max())
