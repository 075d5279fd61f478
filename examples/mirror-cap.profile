# The cap over the mirror: its edge a full half-round, as the torus of a base.
profile  mirror cap
units    inch
stock    3 wide, 3/4 thick

start    face 3/8
torus    3/4                 # ends on the underside
