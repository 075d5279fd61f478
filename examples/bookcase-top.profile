# The bookcase's top: an ovolo standing between two fillets.
profile  bookcase top
units    inch
stock    10 1/2 wide, 3/4 thick

start    face 1/2
step     down 1/8            # the upper fillet
ovolo    3/8                 # a quadrant, out and down
fillet   out 1/8             # the lower fillet, out to the working edge
