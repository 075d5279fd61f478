# The rail under the bookcase's top: a plain cavetto, a hollow quarter circle.
profile  bookcase rail
units    inch
stock    2 1/2 wide, 3/4 thick

start    face 3/8
cavetto  3/8                 # out and down, ending on the working edge
