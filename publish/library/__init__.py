"""The library: what the sessions of a shop tell together, work by work and thing by thing.

Everything is made from the sessions' own pages, so that library and session never tell two things.
"""
