# The rail that holds the bookcase's back boards: nothing but a rebate.
profile  back rail
units    inch
stock    1 1/2 wide, 3/4 thick

start    face 1/2
step     down 3/8
fillet   out 1/2
