"""The only words, tables, JSON and pictures: reads finished answers, computes no golf."""
