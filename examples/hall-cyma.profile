# The hall's chair rail in millimetres: a cyma of two arcs of 60 degrees. Height 12
# and projection 9 give a radius of half the diagonal, 7.5.
profile  hall cyma
units    mm
stock    60 wide, 20 thick

start    face 9
ogee     out 9 down 12
