"""The border between what is described and what is computed: tables the kernels read."""
