"""The house's numbers, each as a ratio or against a bound, all measured in one run."""
