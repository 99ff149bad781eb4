"""The local app: who may come in, from where, and how it ends."""
