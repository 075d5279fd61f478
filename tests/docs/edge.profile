profile  edge
stock    2 wide, 3/4 thick
start    face 1/2
step     down 1/8
ovolo    3/8
fillet   out 1/8
