#!/usr/bin/env python3
"""peak.py KIB COMMAND...: runs the command and ends with its exit code, or with 99 where more than so much memory
was ever resident. A third more of address space, shared libraries and all, is refused at once."""
import os
import resource
import sys

most = int(sys.argv[1])
child = os.fork()
if child == 0:
    resource.setrlimit(resource.RLIMIT_AS, (most * 1024 * 4 // 3,) * 2)
    os.execvp(sys.argv[2], sys.argv[2:])
_, status, usage = os.wait4(child, 0)
if usage.ru_maxrss > most:
    print(f"{usage.ru_maxrss} KiB were resident, more than {most}", file=sys.stderr)
    sys.exit(99)
sys.exit(os.waitstatus_to_exitcode(status) % 256)
