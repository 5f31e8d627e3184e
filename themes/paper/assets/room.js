// Room.
