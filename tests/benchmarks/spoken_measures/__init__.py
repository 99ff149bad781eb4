"""How many spoken measures come out right: `python -m tests.benchmarks.spoken_measures` prints the table."""
