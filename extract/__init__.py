"""From a `Transcript` to a `Record`: what was said, understood and checked."""
