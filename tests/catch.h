// The one place that knows which Catch2 is installed: version 2 as packaged, or version 3 (untested).
#pragma once

#ifdef ARRISLINE_CATCH2_V3
#include <catch2/catch_all.hpp>
using Catch::Approx;
#else
#include <catch2/catch.hpp>
#endif
