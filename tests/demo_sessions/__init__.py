"""The demo sessions: what their files hold, and how they are made."""
