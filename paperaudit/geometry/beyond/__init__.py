"""The search beyond linear relations: lengths, ratios, areas, functions of angles, worked out exactly."""
