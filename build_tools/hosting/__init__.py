"""What a server of the handbook needs to know, and how a copy on a server is looked over."""
