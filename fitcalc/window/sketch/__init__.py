"""The drawing on screen: it shows a picture, and says what was pointed at, picked and dragged."""
