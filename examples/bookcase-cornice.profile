# The small cornice under the top: a cavetto with a fillet above and below.
profile  bookcase cornice
units    inch
stock    2 wide, 3/4 thick

start    face 1/2
step     down 1/8
cavetto  3/8
fillet   out 1/8
