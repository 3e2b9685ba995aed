"""Scripts that make the fitted data files; each is run again with ``python -m simulator.fits.NAME``."""
