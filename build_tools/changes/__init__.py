"""What changed since an edition that was handed out: recorded snapshots, and the comparison with today."""
