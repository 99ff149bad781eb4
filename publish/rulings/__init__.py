"""What a shop's own logs of rulings share, whatever they are on: taking back, groups that a person made, names."""
