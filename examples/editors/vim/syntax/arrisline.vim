" Profiles, kits and jobs: comments, names, figures, and the words by their kinds.
" Copy the folders syntax and ftdetect into ~/.vim.
if exists("b:current_syntax")
  finish
endif

syntax case ignore
syntax iskeyword @,45-57

syntax keyword arrislineStatement units stock side start body number end shop board
syntax keyword arrislineStatement blank buy mould saw rip spare moisture
syntax keyword arrislinePlane hollow round rebate bench plough scraper
syntax keyword arrislineElement curve step fillet bevel bead cove ovolo cavetto ogee reverse-ogee torus
syntax keyword arrislineElement astragal chamfer scotia quirk thumbnail
syntax keyword arrislineWord ellipse parabola inch inches in mm wide thick face underside back out down up radius
syntax keyword arrislineWord large width arc reach deep above shaving curved weight change cut
syntax keyword arrislineWord setting stroke wear slow slant uneven strokes gauge facets stops at
syntax keyword arrislineWord screw clear long count length mitre left right both outside inside
syntax keyword arrislineWord spring corner of across kerf allowance true hold

" What stands after these to the end of the line is a name.
syntax keyword arrislineNaming profile kit job shaped nextgroup=arrislineName skipwhite
syntax match arrislineName /[^#[:blank:]][^#]*/ contained
syntax match arrislineFigure /\%(^\|[[:blank:],]\)\@<=\%(\d\|\.\d\)[^[:blank:],#]*/
syntax region arrislineQuoted start=/\%(\d\)\@<!"/ end=/"/ oneline
syntax match arrislineComment /#.*/

highlight default link arrislineNaming Statement
highlight default link arrislineStatement Statement
highlight default link arrislinePlane Type
highlight default link arrislineElement Function
highlight default link arrislineWord Keyword
highlight default link arrislineName String
highlight default link arrislineQuoted String
highlight default link arrislineFigure Number
highlight default link arrislineComment Comment

let b:current_syntax = "arrisline"
