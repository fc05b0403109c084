// SPDX-License-Identifier: MIT
// What is added to a bearing: set, declination, options, and what is said where one is missing.
#include "reduced.hpp"

#include "references/rows.hpp"

using namespace lodebook;
using namespace lodebook::test;

namespace {

const std::string north_sight = "landmark Peak\nstation Q1\nsight Peak 000\n";

void check_correction(const std::string& heading, North wanted, double added, North got) {
  const Reduced log(heading + north_sight, in(wanted));
  INFO(heading << log.codes());
  const Row& row = log.row();
  CHECK(miss(row.correction, added) < exact);
  CHECK(off(row.as_read, 0) < exact);
  CHECK(off(row.bearing, added) < exact);
  CHECK(row.north == got);
}

notebook::DeclinationSetting stated(Declination declination, double sigma = 0) {
  return {notebook::DeclinationSetting::From::stated, declination, sigma};
}
Declination east(double degrees) {
  return Declination::east(degrees).value();
}
Declination west(double degrees) {
  return Declination::west(degrees).value();
}

/// `9E` of a reference row.
std::string with_point(const std::string& text) {
  return std::to_string(number(text.substr(0, text.size() - 1))) + text.back();
}

}  // namespace

TEST_CASE("true is read - set + declination, magnetic is read - set") {
  for (const auto& [heading, to_true, to_magnetic] :
       {std::tuple{"set 10E\ndeclination 24.6E\n", 14.6, -10.0},
        std::tuple{"set 10W\ndeclination 24.6E\n", 34.6, 10.0},
        std::tuple{"set 10E\ndeclination 24.6W\n", -34.6, -10.0},
        std::tuple{"set 0\ndeclination 24.6E\n", 24.6, 0.0},
        std::tuple{"declination 24.6W\n", -24.6, 0.0},
        std::tuple{"set 24.6E\ndeclination 24.6E\n", 0.0, -24.6}}) {
    check_correction(heading, North::geographic, to_true, North::geographic);
    check_correction(heading, North::magnetic, to_magnetic, North::magnetic);
  }
}

TEST_CASE("without a declination the output is magnetic, whichever north is asked for") {
  for (const North wanted : {North::geographic, North::magnetic}) {
    check_correction("", wanted, 0, North::magnetic);
    check_correction("set 10E\n", wanted, -10, North::magnetic);
    check_correction("set 10W\n", wanted, 10, North::magnetic);
  }
}

TEST_CASE("a dial that was right is not corrected") {
  check_correction("declination as-set\n", North::geographic, 0, North::geographic);
  check_correction("set 10E\ndeclination as-set\n", North::geographic, 0, North::geographic);
  check_correction("declination as-set\nset 10E\n", North::geographic, 0, North::geographic);
  check_correction("set 10E\ndeclination as-set\n", North::magnetic, -10, North::magnetic);
  // Nothing says how far its north is from the magnetic one: the rows name what they have.
  check_correction("declination as-set\n", North::magnetic, 0, North::geographic);
  CHECK(Reduced("declination as-set\n" + north_sight).counts().warnings == 0);
  // What was turned into the dial is then the declination.
  for (const char* heading : {"declination as-set\nset 10E\n", "set 10E\ndeclination as-set\n"}) {
    const Reduced log(heading + north_sight);
    CHECK(miss(log.reduction().heading().declination.degrees_east(), 10) < exact);
  }
}

TEST_CASE("a later statement replaces an earlier one") {
  check_correction("declination as-set\nset 5E\ndeclination 8E\n", North::geographic, 3,
                   North::geographic);
  check_correction("declination 8E\nset 5E\ndeclination as-set\n", North::geographic, 0,
                   North::geographic);
}

TEST_CASE("corrections done by hand come out") {
  for (const ReferenceRow& row : reference_rows("declination_by_hand.txt")) {
    INFO(row.at << ": " << row.check << ": " << row.input << " (" << row.source << ")");
    const auto parts = split(row.input, ',');
    std::string heading;
    std::string bearing = parts[0];
    North wanted = North::geographic;
    if (row.check == "magnetic to true") {
      heading = "set 0\ndeclination " + with_point(parts.at(1)) + "\n";
      bearing = std::to_string(number(parts[0]));
    } else if (row.check == "true to magnetic") {
      // A dial with the declination turned into it shows true bearings.
      heading = "set " + with_point(parts.at(1)) + "\n";
      bearing = std::to_string(number(parts[0]));
      wanted = North::magnetic;
    } else {
      REQUIRE(row.check == "dial to true");
      heading =
          "set " + with_point(parts.at(1)) + "\ndeclination " + with_point(parts.at(2)) + "\n";
    }
    const Reduced log(heading + "landmark Peak\nstation Q1\nsight Peak " + bearing + "\n",
                      in(wanted));
    // std::to_string keeps six decimals.
    CHECK(off(log.row().bearing, number(row.expected)) < 1e-6);
    CHECK(log.row().north == wanted);
  }
}

TEST_CASE("settings hold from their line on, in the middle of a station too") {
  const Reduced log(R"(set 0
declination 10E
landmark Peak
station Q1
sight Peak 000
set 4E
sight Peak 000
station Q2
declination 2W
sight Peak 000
declination as-set
sight Peak 000
)");
  CHECK(off(log.row(0).bearing, 10) < exact);
  CHECK(off(log.row(1).bearing, 6) < exact);
  CHECK(off(log.row(2).bearing, 354) < exact);
  CHECK(off(log.row(3).bearing, 0) < exact);
  CHECK(off(log.pages().at(2).settings.set.degrees_east(), 4) < exact);
  // The report's first line speaks of the first reading.
  CHECK(miss(log.reduction().heading().declination.degrees_east(), 10) < exact);
  CHECK(miss(log.reduction().heading().set.degrees_east(), 0) < exact);
}

TEST_CASE("a log without readings has the settings of its end as heading") {
  const Reduced log("set 0\ndeclination 10E\nstation Q1\ndeclination 3W\n");
  CHECK(miss(log.reduction().heading().declination.degrees_east(), -3) < exact);
}

TEST_CASE("options stand in for what the log does not say") {
  Options options;
  options.set = east(10);
  options.declination = stated(east(24.6), 0.4);
  options.rule = HandRule::left;
  const Reduced log("landmark Peak\nstation Q1\nsight Peak 000\nbedding 090/30\n", options);
  INFO(log.codes());
  CHECK(log.diagnostics().empty());
  CHECK(off(log.row().bearing, 14.6) < exact);
  CHECK(miss(log.row().uncertainty, std::hypot(0.5, 0.4)) < exact);
  CHECK(off(log.row(1).strike, 270 + 14.6) < exact);
  using reduction::From;
  CHECK(log.reduction().heading().set_from == From::option);
  CHECK(log.reduction().heading().declination_from == From::option);
  CHECK(log.reduction().heading().rule_from == From::option);
}

TEST_CASE("the log's own statement wins over an option, with a warning where they differ") {
  Options options;
  options.set = east(1);
  options.declination = stated(west(5));
  options.rule = HandRule::left;
  const Reduced log(
      "set 2E\ndeclination 24.6E\nrule right\nlandmark Peak\nstation Q1\nsight Peak 000\n"
      "bedding 090/30\n",
      options);
  CHECK(off(log.row().bearing, 22.6) < exact);
  CHECK(off(log.row(1).strike, 112.6) < exact);
  const auto warnings = log.all(Code::option_overridden);
  REQUIRE(warnings.size() == 3);
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK(warnings[i]->place.line == i + 1);
    CHECK(warnings[i]->severity == Severity::warning);
  }
  CHECK(log.reduction().heading().declination_from == reduction::From::log);

  options.set = east(2);
  options.declination = stated(east(24.6));
  options.rule = HandRule::right;
  const Reduced same("set 2E\ndeclination 24.6E ±0.4\nrule right\n" + north_sight, options);
  CHECK(same.count(Code::option_overridden) == 0);
  CHECK(miss(same.row().uncertainty, std::hypot(0.5, 0.4)) < exact);

  options.declination =
      notebook::DeclinationSetting{notebook::DeclinationSetting::From::as_set, {}, 0};
  const Reduced other("set 2E\ndeclination 2E\n" + north_sight, options);
  CHECK(other.count(Code::option_overridden) == 1);
}

TEST_CASE("an option may declare the dial right") {
  Options options;
  options.declination =
      notebook::DeclinationSetting{notebook::DeclinationSetting::From::as_set, {}, 0};
  const Reduced log("set 20E\n" + north_sight, options);
  CHECK(log.diagnostics().empty());
  CHECK(off(log.row().bearing, 0) < exact);
  CHECK(log.row().north == North::geographic);
}

TEST_CASE("a declination over a degree without a set is said once a log") {
  const Reduced log("declination 24.6E\n" + north_sight +
                    "sight Peak 010\nstation Q2\nsight Peak 20\n");
  const Diagnostic& said = log.only(Code::set_missing);
  CHECK(said.severity == Severity::warning);
  CHECK(said.place.line == 4);
  for (std::size_t i = 0; i < 3; ++i) {
    CHECK(log.row(i).status == Status::ok);
    CHECK(log.row(i).codes.empty());
  }

  CHECK(Reduced("declination 1E\n" + north_sight).count(Code::set_missing) == 0);
  CHECK(Reduced("declination 1.1W\n" + north_sight).count(Code::set_missing) == 1);
  CHECK(Reduced("declination 24.6E\nset 0\n" + north_sight).count(Code::set_missing) == 0);
  CHECK(Reduced("declination as-set\n" + north_sight).count(Code::set_missing) == 0);
  CHECK(Reduced("declination 24.6E\nstation Q1\nnote no readings\n").count(Code::set_missing) == 0);
  // Small at first, and large later.
  CHECK(Reduced("declination 1E\n" + north_sight + "declination 2E\nsight Peak 010\n")
            .only(Code::set_missing)
            .place.line == 6);
}

TEST_CASE("a missing declination is said once a log") {
  const Reduced log(north_sight + "sight Peak 010\nstation Q2\nsight Peak 020\n");
  const Diagnostic& said = log.only(Code::declination_missing);
  CHECK(said.severity == Severity::warning);
  CHECK(log.row().status == Status::ok);
  CHECK(Reduced("set 10E\n" + north_sight).count(Code::declination_missing) == 1);
  CHECK(Reduced("declination 0\n" + north_sight).count(Code::declination_missing) == 0);
  CHECK(Reduced("station Q1\nnote nothing read\n").count(Code::declination_missing) == 0);
  // A rejected reading has no bearing that could stay magnetic.
  const std::string faulty = "station Q1\nbedding N98E 41N\n";
  CHECK(Reduced(faulty).count(Code::declination_missing) == 0);
  CHECK(Reduced(faulty + "bedding N78E 41N\n").only(Code::declination_missing).place.line == 3);
  CHECK(Reduced("declination 9E\n" + faulty).count(Code::set_missing) == 0);
  // Nothing is missing where magnetic output was asked for.
  CHECK(Reduced(north_sight, in(North::magnetic)).count(Code::declination_missing) == 0);
}

TEST_CASE("a faulty declination statement explains why none is known") {
  for (const char* statement : {"declination 24.6", "Declination 200E", "  declination model",
                                "declination", "declination 24,6E"}) {
    INFO(statement);
    const Reduced log(std::string(statement) + "\n" + north_sight);
    CHECK(log.count(Code::declination_missing) == 0);
    CHECK(log.counts().errors == 1);
    CHECK(log.row().north == North::magnetic);
  }
}

TEST_CASE("an unrelated fault does not hide that the declination is missing") {
  CHECK(Reduced("elevaton 5 # declination unknown\n" + north_sight)
            .count(Code::declination_missing) == 1);
  // What comes later explains nothing.
  CHECK(Reduced(north_sight + "declination 24.6\n").count(Code::declination_missing) == 1);
}
