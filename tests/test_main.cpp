// SPDX-License-Identifier: MIT
// The main of Catch2 2, compiled once for the tests of all rooms; Catch2 3 brings its own.
#define CATCH_CONFIG_MAIN
#include <catch.hpp>
