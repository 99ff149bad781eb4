"""A person's commands and clicks, and nothing else."""
