# The little shelf below the mirror: a reverse ogee, the cove above and the bead
# below, with a fillet between them.
profile  mirror shelf
units    inch
stock    5 wide, 3/4 thick

start    face 5/8
cove     out 3/16 down 5/16 radius 3/8
fillet   out 1/8
bead     out 5/16 down 3/16 radius 3/8
