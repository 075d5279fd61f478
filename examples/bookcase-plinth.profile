# The plinth block's edge: an ogee with a flat fillet between bead and cove.
profile  bookcase plinth
units    inch
stock    3 wide, 3/4 thick

start    face 3/4
bead     out 5/16 down 3/16 radius 3/8
fillet   out 1/8
cove     out 5/16 down 3/16 radius 3/8
