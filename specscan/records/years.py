"""What the model year of a van can look like in print."""

MODEL_YEAR = r"(?:19[89]\d|20[0-4]\d)"  # of figures such as "1960" it is none: that is the code of a floorplan
