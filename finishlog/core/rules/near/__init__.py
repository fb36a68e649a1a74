"""What lies beside a zone: other faces, wet films in the room, the joint it was glued at."""
