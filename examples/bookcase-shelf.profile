# The front edge of the hall bookcase's shelves: the edge rounded over with a
# quarter circle of half the thickness. A No. 6 hollow is half of 3/4 in stock.
profile  bookcase shelf
units    inch
stock    9 wide, 3/4 thick

start    face 3/8            # begin on the face, 3/8 in from the working edge
bead     out 3/8 down 3/8    # a quadrant, ending on the working edge
