"""The frozen values that every other layer speaks in: papers, facts, asks, derivations, findings."""
