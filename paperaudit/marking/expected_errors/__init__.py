"""Errors that learners are documented to make, each as a formula for the wrong answer at hand; one file a topic."""
