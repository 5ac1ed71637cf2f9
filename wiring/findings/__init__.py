"""What is wrong or weak in a plan, in words, with a mend; one file per theme."""
