# The mirror's slip: an ovolo at the sight edge, and underneath a rebate that takes
# the glass, 3/8 in wide and 1/4 in deep.
profile  mirror slip
units    inch
stock    1 1/4 wide, 3/4 thick

start    face 3/8
bead     out 3/8 down 3/8

side     underside           # from here the section is read upside down
start    face 3/8            # on the underside, 3/8 in from the working edge
step     down 1/4            # away from the underside, into the wood
fillet   out 3/8             # out to the working edge, under the ovolo
