"""The right-hand side: fields and live figures for what is selected, or for the plan as a whole."""
