"""Tests of extract/remarks."""
