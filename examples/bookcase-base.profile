# The top of the bookcase's base board: an ogee, the bead above and the cove
# below, both worked by the sixes.
profile  bookcase base
units    inch
stock    4 wide, 3/4 thick

start    face 9/16
ogee     out 9/16 down 1/2 radius 3/8
