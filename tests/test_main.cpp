// SPDX-License-Identifier: MIT
// Catch2's main, compiled once for the tests of all rooms.
#define CATCH_CONFIG_MAIN
#include <catch2/catch.hpp>
