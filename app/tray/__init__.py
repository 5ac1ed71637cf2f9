"""The left-hand side: parts ordered by what the builder wants to do."""
