# The stiles of the bookcase: a plain chamfer.
profile  bookcase stile
units    inch
stock    2 wide, 3/4 thick

start    face 1/4
chamfer  1/4
