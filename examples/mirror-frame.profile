# The mirror's frame, worked over its whole width from the back edge (against the
# wall) to the sight edge (at the glass). The sight edge is the working edge.
profile  mirror frame
units    inch
stock    1 1/2 wide, 3/4 thick

start    back 1/8            # a depth: begin on the back edge, 1/8 in below the face
fillet   out 3/8
cove     out 5/16 down 3/16 radius 3/8
fillet   out 1/8
bead     out 5/16 down 3/16 radius 3/8
fillet   out 3/8
