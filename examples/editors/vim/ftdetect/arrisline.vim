autocmd BufRead,BufNewFile *.profile,*.kit,*.job set filetype=arrisline commentstring=#\ %s
