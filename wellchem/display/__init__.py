"""What people see: text for a terminal, one HTML page, plots. Knows the models and nothing of how they were made."""
