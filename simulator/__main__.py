"""``python -m simulator`` is ``holesim``."""

from .cli import main

if __name__ == "__main__":
    main()
