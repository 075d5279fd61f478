# A picture rail: a shallow cove along the middle of a wide face, the face left
# flat on both sides of it. The chain begins and ends on the face.
profile  picture rail
units    inch
stock    3 wide, 3/4 thick

start    face 1 3/4
cove     out 1/2 radius 3/8  # as wide as 1/2 in, so a little under 1/10 in deep
