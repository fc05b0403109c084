// SPDX-License-Identifier: MIT
// Catch2, 2.13 or 3: what the two call alike under one header, and what they do not under one name.
#pragma once

#if __has_include(<catch2/catch_all.hpp>)
#include <catch2/catch_all.hpp>
namespace lodebook::test {
template <class T>
using MatcherBase = Catch::Matchers::MatcherBase<T>;
}
using Catch::Approx;
#else
#include <catch2/catch.hpp>
namespace lodebook::test {
template <class T>
using MatcherBase = Catch::MatcherBase<T>;
}
#endif
