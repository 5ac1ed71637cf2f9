"""The strip below the plan that says what is wrong or weak."""
