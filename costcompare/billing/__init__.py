"""What electricity costs: tariffs, and the clock that a bill is counted by."""
