"""What lies under a place of the plan, for each sort of thing."""
