"""Money over the years: payback and life-cycle figures, and what others may pay."""
