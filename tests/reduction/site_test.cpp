// SPDX-License-Identifier: MIT
// What place and date give: the model's declination, what it says of a stated one, grid north.
#include "reduced.hpp"

#include <lodebook/earth/geomagnetic.hpp>
#include <lodebook/orientation/precision.hpp>

namespace {

using namespace lodebook;
using notebook::Code;
using reduction::North;
using test::exact;
using test::in;
using test::miss;
using test::off;
using test::Options;
using test::Reduced;

constexpr earth::Position ridge{-44.6891, 169.0144};
constexpr double february_2026 = 2026 + 44.0 / 365;
const std::string at_ridge = "station Q1 at 44.6891S 169.0144E\n";
const std::string reading = "bedding N78E 41N\n";  // strike 258, dip to the right

earth::MagneticField field_of(const earth::Position& at, double height_m, double year) {
  const auto field = earth::magnetic_field(at, height_m, year);
  REQUIRE(field);
  return *field;
}

Options by_model(North north = North::geographic) {
  Options options = in(north);
  options.declination = {notebook::DeclinationSetting::From::model, {}, 0};
  return options;
}

}  // namespace

TEST_CASE("the model gives each station the declination of its own place and date") {
  const Reduced log(
      "set 0\ndeclination model\n"
      "date 1978-07-19\nstation A at 55.64N 62.41W\nelevation 300\nbedding N50W 81E\n"
      "date 2026-02-14\nstation B at 44.6891S 169.0144E\nbedding N50W 81E\n");  // two journeys
  const auto labrador = field_of({55.64, -62.41}, 300, 1978 + 199.0 / 365);
  const auto zealand = field_of(ridge, 0, february_2026);
  CHECK(miss(log.row(0).correction, labrador.declination().degrees_east()) < exact);
  CHECK(miss(log.row(1).correction, zealand.declination().degrees_east()) < exact);
  CHECK(off(log.row(0).strike, 310 + labrador.declination().degrees_east()) < exact);
  CHECK(log.row(0).north == North::geographic);
  CHECK(log.pages()[1].settings.site.field->model() == earth::FieldModel::igrf12);
  CHECK(log.pages()[2].settings.site.field->model() == earth::FieldModel::wmm2025);
  // Its uncertainty is in the row's.
  CHECK(miss(log.row(0).uncertainty, std::hypot(strike_sigma(0.5, 1, *Dip::from_degrees(81)),
                                                labrador.declination_sigma())) < exact);
  CHECK(log.codes() == "position-far ");
}

TEST_CASE("a station's settings are those of its first reading, wherever they are stated") {
  const double east = field_of(ridge, 0, february_2026).declination().degrees_east();
  for (const std::string& text :
       {"set 0\ndeclination model\n" + at_ridge + "date 2026-02-14\n" + reading,
        at_ridge + "date 2026-02-14\nset 0\ndeclination model\n" + reading,
        "set 0\ndeclination model\ndate 1978-07-19\n" + at_ridge + "date 2026-02-14\n" + reading +
            "date 1978-07-19\n"}) {
    INFO(text);
    const Reduced log(text);
    CHECK(miss(log.pages()[1].settings.declination.degrees_east(), east) < exact);
    CHECK(miss(log.reduction().heading().declination.degrees_east(), east) < exact);
    CHECK(miss(log.row().correction, east) < exact);
  }
  // Without a reading, those at the station's end.
  const Reduced none("set 0\ndeclination model\n" + at_ridge + "date 2026-02-14\n");
  CHECK(miss(none.pages()[1].settings.declination.degrees_east(), east) < exact);
}

TEST_CASE("a date that changes within a station changes the declination there") {
  const Reduced log("set 0\ndeclination model\ndate 1978-07-19\n" + at_ridge + reading +
                    "date 2026-02-14\n" + reading);
  CHECK(miss(log.row(0).correction,
             field_of(ridge, 0, 1978 + 199.0 / 365).declination().degrees_east()) < exact);
  CHECK(miss(log.row(1).correction,
             field_of(ridge, 0, february_2026).declination().degrees_east()) < exact);
}

TEST_CASE("a position below the readings of a station holds for them, and in the heading") {
  const Reduced log("set 0\ndeclination model\ndate 2026-02-14\nstation Q1\n" + reading +
                    "at 44.6891S 169.0144E\n");
  const double east = field_of(ridge, 0, february_2026).declination().degrees_east();
  CHECK(miss(log.row().correction, east) < exact);
  CHECK(miss(log.reduction().heading().declination.degrees_east(), east) < exact);
}

TEST_CASE("what was set into the dial is taken off whatever the model gives") {
  const Reduced log("set 20E\ndeclination model\ndate 2026-02-14\n" + at_ridge + reading);
  CHECK(miss(log.row().correction,
             field_of(ridge, 0, february_2026).declination().degrees_east() - 20) < exact);
}

TEST_CASE("without a position the nearest one above is taken, and said so") {
  const std::string head = "set 0\ndeclination model\ndate 2026-02-14\n";
  const double east = field_of(ridge, 0, february_2026).declination().degrees_east();
  const auto taken = [&](const std::string& text) {
    const Reduced log(head + text);
    const auto& last = log.row(log.row_count() - 1);
    CHECK(log.only(Code::position_borrowed).severity == notebook::Severity::note);
    CHECK(last.north == North::geographic);
    CHECK(!log.pages().back().position);
    return last.correction;
  };
  CHECK(miss(taken(at_ridge + reading + "station Q2\n" + reading + reading), east) < exact);
  CHECK(miss(taken("landmark Peak 44.6891S 169.0144E\nstation Q2\n" + reading), east) < exact);
  // With its height, which is worth a hair.
  CHECK(miss(taken(at_ridge + "elevation 8000\n" + reading + "station Q2\n" + reading),
             field_of(ridge, 8000, february_2026).declination().degrees_east()) < exact);
  CHECK(miss(taken("landmark Peak 44.6891S 169.0144E elevation 8000\nstation Q2\n" + reading),
             field_of(ridge, 8000, february_2026).declination().degrees_east()) < exact);
  // A station goes before a landmark, wherever they stand.
  CHECK(miss(taken(at_ridge + "landmark Peak 10S 100E\nstation Q2\n" + reading), east) < exact);
  // Each station says so, once.
  const Reduced two(head + at_ridge + "station Q2\n" + reading + reading + "station Q3\n" +
                    reading);
  CHECK(two.count(Code::position_borrowed) == 2);
  // Not where nothing hangs on it.
  CHECK(Reduced("set 0\ndeclination 25E\ndate 2026-02-14\n" + at_ridge + "station Q2\n" + reading)
            .codes()
            .empty());
  CHECK(Reduced(head + at_ridge + "station Q2\n" + reading, in(North::magnetic)).codes().empty());
}

TEST_CASE("where the model cannot tell, it is an error once, and bearings stay magnetic") {
  const auto check = [](const std::string& text, const char* why) {
    INFO(text);
    const Reduced log(text + "station Q9\n" + reading);
    CHECK(log.only(Code::declination_model).severity == notebook::Severity::error);
    CHECK(log.only(Code::declination_model).message.find(why) != std::string::npos);
    for (std::size_t i = 0; i < log.row_count(); ++i) {
      CHECK(log.row(i).north == North::magnetic);
      CHECK(miss(log.row(i).correction, -10) < exact);
      CHECK(log.row(i).status == reduction::Status::ok);
    }
    CHECK(log.counts().errors == 1);
    CHECK(log.counts().not_understood == 0);
    CHECK(log.codes() == "declination-model ");
  };
  check("set 10E\ndeclination model\n" + at_ridge + reading, "needs a date");
  check("set 10E\ndeclination model\ndate 2026-02-14\nstation Q1\n" + reading, "needs a position");
  check("set 10E\ndeclination model\ndate 1899-12-31\n" + at_ridge + reading, "1900-01-01");
  check("set 10E\ndeclination model\ndate 2030-01-02\n" + at_ridge + reading, "2030-01-01");
  check("set 10E\ndeclination model\ndate 2026-02-14\n" + at_ridge + "elevation 900000\n" +
            reading + "\n",
        "900000 m");
}

TEST_CASE("a date outside the models is shown where it is stated") {
  const Reduced log("set 0\ndeclination model\ndate 1899-12-31\n" + at_ridge + reading);
  const auto& outside = log.only(Code::declination_model);
  CHECK(outside.place.line == 3);
  REQUIRE(outside.related.size() == 1);
  CHECK(outside.related[0].place.line == 4);
}

TEST_CASE("a declination whose statement is void is not the one before it") {
  const std::string heading = "set 0\ndeclination 20E\n" + at_ridge + "bedding N62E 37NW\n";
  const Reduced log(heading + "declination -24.6E\nstation Q2\nbedding N62E 37NW\n");
  CHECK(log.row(0).north == North::geographic);
  CHECK(log.row(1).north == North::magnetic);
  CHECK(log.row(1).status == reduction::Status::ok);
  CHECK(log.codes() == "declination-side ");
  const Reduced again(heading +
                      "declination -24.6E\ndeclination 24.6W\nstation Q2\nbedding N62E 37NW\n");
  CHECK(off(again.row(1).strike, 242 - 24.6) < exact);
  Options options;
  options.declination = {notebook::DeclinationSetting::From::stated, *Declination::east(5), 0};
  const Reduced stood_in("set 0\ndeclination 24.6\n" + at_ridge + "bedding N62E 37NW\n", options);
  CHECK(off(stood_in.row(0).strike, 247) < exact);
}

TEST_CASE("what was set, where its statement is void, is not what was set before") {
  const Reduced log("set 10E\ndeclination 20E\n" + at_ridge + "set 5\nbedding N62E 37NW\n");
  CHECK(miss(log.row(0).correction, 20) < exact);
  CHECK(log.codes() == "declination-side ");
}

TEST_CASE("each cause is said, whatever was said before") {
  const Reduced log("set 0\ndeclination model\nstation Q1\n" + reading + "date 1885-02-14\n" +
                    "station Q2 at 44.6891S 169.0144E\n" + reading + reading +
                    "date 1886-02-14\nstation Q3\n" + reading);
  CHECK(log.codes() == "declination-model declination-model ");
  // A warning does not stand for an error of the same code, nor the other way round.
  const std::string stated = "declination 10E\nstation P at 85.5N 140E\n" + reading;
  const std::string model = "declination model\nstation Q at 85.5N 140E\n" + reading;
  for (const std::string& text : {stated + model, model + stated}) {
    const Reduced pole("set 0\ndate 2026-02-14\n" + text);
    CHECK(pole.count(Code::weak_field) == 2);
    CHECK(pole.counts().errors == 1);
  }
}

TEST_CASE("a station that has what is missing is corrected all the same") {
  const Reduced log("set 0\ndeclination model\nstation Q1 at 44.6891S 169.0144E\n" + reading +
                    "date 2026-02-14\nstation Q2 at 44.6891S 169.0144E\n" + reading);
  CHECK(log.count(Code::declination_model) == 1);
  CHECK(log.row(0).north == North::magnetic);
  CHECK(log.row(1).north == North::geographic);
}

TEST_CASE("the model stands in from the command line, and a log's own statement wins") {
  const Reduced alone("set 0\ndate 2026-02-14\n" + at_ridge + reading, by_model());
  CHECK(miss(alone.row().correction,
             field_of(ridge, 0, february_2026).declination().degrees_east()) < exact);
  CHECK(alone.codes().empty());
  const Reduced log("set 0\ndeclination 25E\ndate 2026-02-14\n" + at_ridge + reading, by_model());
  CHECK(miss(log.row().correction, 25) < exact);
  CHECK(log.codes() == "option-overridden ");
}

TEST_CASE(
    "where no needle finds north the model corrects nothing, and a stated value is warned of") {
  const std::string pole = "date 2026-02-14\nset 0\nstation P at 85.5N 140E\n" + reading;
  const double horizontal = field_of({85.5, 140}, 0, february_2026).horizontal_nt();
  REQUIRE(horizontal < earth::useless_below_nt);
  const Reduced model("declination model\n" + pole);
  CHECK(model.only(Code::weak_field).severity == notebook::Severity::error);
  CHECK(model.row().north == North::magnetic);
  CHECK(model.codes() == "weak-field ");
  const double east = field_of({85.5, 140}, 0, february_2026).declination().degrees_east();
  const Reduced stated("declination " + std::to_string(std::abs(east)) + (east < 0 ? "W" : "E") +
                       "\n" + pole);
  CHECK(stated.only(Code::weak_field).severity == notebook::Severity::warning);
  CHECK(stated.row().north == North::geographic);
  // A weak field is a caution, once a log.
  const Reduced weak("declination model\ndate 2026-02-14\nset 0\nstation P at 72.5N 95W\n" +
                     reading + "station Q at 72.5N 95W\n" + reading);
  CHECK(weak.only(Code::weak_field).severity == notebook::Severity::warning);
  CHECK(weak.row().north == North::geographic);
}

TEST_CASE("a stated declination is held against the model") {
  const auto codes = [](const std::string& declination, const char* date = "2026-02-14",
                        const Options& options = {}) {
    return Reduced(declination + "set 0\ndate " + date + "\n" + at_ridge + reading +
                       "station Q2\n" + reading,
                   options)
        .codes();
  };
  // The model has 24.98 E +-0.38.
  CHECK(codes("declination 25E\n").empty());
  CHECK(codes("declination 24.05E\n").empty());
  CHECK(codes("declination 25.9E\n").empty());
  CHECK(codes("declination 23.9E\n") == "declination-stale ");
  CHECK(codes("declination 26.1E\n") == "declination-stale ");
  CHECK(codes("declination 23.9E ±2\n").empty());
  CHECK(codes("declination 25W\n") == "declination-sign ");
  CHECK(codes("declination 22W\n") == "declination-sign ");
  CHECK(codes("declination 10W\n") == "declination-stale ");
  // Outside the models' years nothing is known.
  CHECK(codes("declination 25W\n", "1890-02-14").empty());
  // From the command line likewise; and a dial that was right.
  Options option;
  option.declination = {notebook::DeclinationSetting::From::stated, *Declination::west(25), 0};
  CHECK(codes("", "2026-02-14", option) == "declination-sign ");
  CHECK(Reduced("set 25W\ndeclination as-set\ndate 2026-02-14\n" + at_ridge + reading).codes() ==
        "declination-sign ");
  CHECK(Reduced("declination as-set\ndate 2026-02-14\n" + at_ridge + reading).codes().empty());
}

TEST_CASE("a stale declination says when it was true, and where it is stated") {
  const Reduced log("set 0\ndeclination 22E\ndate 2026-02-14\n" + at_ridge + reading);
  const auto& fault = log.only(Code::declination_stale);
  CHECK(fault.severity == notebook::Severity::warning);
  CHECK(fault.place.line == 4);
  REQUIRE(fault.related.size() == 1);
  CHECK(fault.related.front().place.line == 2);
  CHECK(log.row().status == reduction::Status::ok);
  // The year named is one in which the model does have 22 E there.
  const std::size_t at = fault.help.find(" in ");
  REQUIRE(at != std::string::npos);
  const double year = std::stod(fault.help.substr(at + 4));
  CHECK(year > 1940);
  CHECK(year < 2000);
  CHECK(std::abs(field_of(ridge, 0, year + 0.5).declination().degrees_east() - 22) < 0.1);
  // Never so: no year.
  const Reduced never("set 0\ndeclination 50E\ndate 2026-02-14\n" + at_ridge + reading);
  CHECK(never.only(Code::declination_stale).help.find("never") != std::string::npos);
}

TEST_CASE("what is off by much more than said is said again") {
  const std::string head = "set 0\ndate 2026-02-14\ndeclination 23E\n";
  const std::string near = "station Q1 at 44.6891S 169.0144E\n" + reading;  // 2 degrees off
  const std::string mirrored = "station Q2 at 44.6891N 169.0144E\n" + reading;
  CHECK(Reduced(head + near + near).count(Code::declination_stale) == 1);
  CHECK(Reduced(head + near + mirrored).count(Code::declination_stale) == 2);
  CHECK(Reduced(head + mirrored + near).count(Code::declination_stale) == 1);
  // Stated again on the next page, it is the same declination.
  CHECK(Reduced(head + near + "declination 23E\n" + near).count(Code::declination_stale) == 1);
}

TEST_CASE("a dial set to the wrong side is warned of, with or without a position") {
  const auto codes = [](const std::string& heading) {
    return Reduced(heading + "date 2026-02-14\n" + at_ridge + reading + reading).codes();
  };
  CHECK(codes("set 25W\ndeclination 25E\n") == "set-side ");
  CHECK(codes("set 25W\ndeclination model\n") == "set-side ");
  CHECK(codes("set 24E\ndeclination 25E\n").empty());
  CHECK(codes("set 0\ndeclination 25E\n").empty());
  CHECK(codes("set 5W\ndeclination 25E\n").empty());
  CHECK(Reduced("set 3W\ndeclination 3E\nstation Q1\n" + reading).codes() == "set-side ");
  CHECK(Reduced("set 0.5W\ndeclination 0.5E\nstation Q1\n" + reading).codes().empty());
}

TEST_CASE("a station far from those before it is warned of, and its neighbours are not") {
  const auto codes = [](std::initializer_list<const char*> places) {
    std::string text = "set 0\n";
    for (const char* place : places)
      text += std::string("station ") + "S" + std::to_string(text.size()) + " at " + place + "\n";
    return Reduced(text).codes();
  };
  CHECK(codes({"44.6S 169E", "44.7S 169.1E", "44.8S 169.2E"}).empty());
  CHECK(codes({"44.6S 169E", "44.7N 169.1E", "44.8S 169.2E"}) == "position-far ");
  CHECK(codes({"44.6S 169E", "44.7S 169.1W", "44.8S 169.2E"}) == "position-far ");
  // Who goes on there is not told again.
  CHECK(codes({"44.6S 169E", "44.7N 169.1E", "44.8N 169.2E"}) == "position-far ");
  CHECK(codes({"17S 179.9E", "17S 179.9W"}).empty());  // over the date line
  CHECK(codes({"89.9N 10E", "89.9N 170W"}).empty());   // over the pole
  CHECK(codes({"0N 0E", "4.4N 0E"}).empty());
  CHECK(codes({"0N 0E", "4.6N 0E"}) == "position-far ");
}

TEST_CASE("each declination of a log is held against the model, once") {
  const Reduced log("set 0\ndate 2026-02-14\ndeclination 22E\n" + at_ridge + reading + reading +
                    "declination 21E\n" + reading + reading + "declination 25E\n" + reading);
  CHECK(log.count(Code::declination_stale) == 2);
}

TEST_CASE("grid is true - convergence, with the zone of each station") {
  const Reduced log("set 0\ndeclination 24.6E\nstation Q1 at 44.6891S 169.0144E\n" + reading +
                        "lineation N50W 35\nstation Q2 at 44.6891S 173.0144E\n" + reading,
                    in(North::grid));
  const auto west = earth::grid_position(ridge);
  const auto east = earth::grid_position({-44.6891, 173.0144});
  CHECK(west.convergence.degrees_east() > 1);
  CHECK(east.convergence.degrees_east() < -1);
  CHECK(off(log.row(0).strike, 258 + 24.6 - west.convergence.degrees_east()) < exact);
  CHECK(off(log.row(1).trend, 310 + 24.6 - west.convergence.degrees_east()) < exact);
  CHECK(off(log.row(2).strike, 258 + 24.6 - east.convergence.degrees_east()) < exact);
  for (std::size_t i = 0; i < 3; ++i)
    CHECK(log.row(i).north == North::grid);
  const auto angle = log.pages()[1].settings.grid_magnetic_angle();
  CHECK(miss(angle, 24.6 - west.convergence.degrees_east()) < exact);
  CHECK(log.codes().empty());
}

TEST_CASE("a dial that was right is turned to the grid all the same") {
  const Reduced log("declination as-set\n" + at_ridge + reading, in(North::grid));
  CHECK(off(log.row().strike, 258 - earth::grid_position(ridge).convergence.degrees_east()) <
        exact);
  CHECK(log.row().north == North::grid);
}

TEST_CASE("grid north needs a position, or else the rows refer to true north and say so") {
  const Reduced log("set 0\ndeclination 24.6E\nstation Q1\n" + reading + "station Q2\n" + reading,
                    in(North::grid));
  CHECK(log.only(Code::grid_unknown).severity == notebook::Severity::warning);
  CHECK(log.row(0).north == North::geographic);
  CHECK(off(log.row(0).strike, 282.6) < exact);
  const Reduced borrowed("set 0\ndeclination 24.6E\n" + at_ridge + "station Q2\n" + reading,
                         in(North::grid));
  CHECK(borrowed.row().north == North::grid);
  CHECK(borrowed.count(Code::position_borrowed) == 1);
  // The needle's north is not known where nothing says what was set on a dial that was right.
  CHECK(!Reduced("declination as-set\n" + at_ridge + reading, in(North::grid))
             .pages()[1]
             .settings.grid_magnetic_angle());
  // Without a declination neither can be had.
  const Reduced magnetic("set 0\n" + at_ridge + reading, in(North::grid));
  CHECK(magnetic.codes() == "declination-missing ");
  CHECK(magnetic.row().north == North::magnetic);
}

TEST_CASE("the grid is worked out only where it is asked for") {
  const std::string text =
      "set 0\ndeclination 24.6E\n" + at_ridge + reading + "station Q2\n" + reading;
  CHECK(!Reduced(text).pages()[1].settings.site.grid);
  Options options;
  options.grid_columns = true;
  const Reduced log(text, options);
  CHECK(log.pages()[1].settings.site.grid->designation() == "59G");
  CHECK(log.row(0).north == North::geographic);
}

TEST_CASE("a station's field is worked out ahead for the place and date of its first reading") {
  const auto book = notebook::read_log(notebook::Source(
      "day.txt",
      "date 2026-02-13\nbedding N78E 41N\n"
      "station A at 44.6891S 169.0144E\ndate 2026-02-14\nbedding N78E 41N\ndate 2027-02-14\n"
      "station B\nat 55.64N 62.41W\nbedding N78E 41N\nelevation 300\n"
      "station C\nbedding N78E 41N\n"
      "station D at 44.6891S 169.0144E\n"));
  notebook::BlockReader blocks(book);
  reduction::FieldAhead fields(book);
  std::vector<std::optional<reduction::KnownField>> known;
  for (notebook::Block block; blocks.next(block);)
    known.push_back(fields.of(block));
  REQUIRE(known.size() == 5);
  CHECK_FALSE(known[0]);
  REQUIRE(known[1]);
  CHECK(known[1]->at == reduction::PlaceAndDate{ridge, 0, {2026, 2, 14}});
  CHECK(miss(known[1]->field->east_nt(), field_of(ridge, 0, february_2026).east_nt()) < exact);
  REQUIRE(known[2]);
  CHECK(known[2]->at == reduction::PlaceAndDate{{55.64, -62.41}, 300, {2027, 2, 14}});
  CHECK_FALSE(known[3]);  // no position
  CHECK_FALSE(known[4]);  // no reading
}

TEST_CASE("a field worked out ahead is taken where place and date are its own, and nowhere else") {
  const auto book = notebook::read_log(
      notebook::Source("day.txt", "date 2026-02-14\nset 0\ndeclination model\n" + at_ridge +
                                      reading + "date 1978-02-14\n" + reading));
  const earth::MagneticField other(20'000, 0, 40'000, earth::FieldModel::igrf12);
  const auto corrections = [&](const reduction::PlaceAndDate& at) {
    notebook::BlockReader blocks(book);
    reduction::Reduction log(
        book, {}, [&](notebook::Block& block, std::optional<reduction::KnownField>& field) {
          field = {at, other};
          return blocks.next(block);
        });
    std::vector<double> found;
    for (reduction::Page page; log.next(page);) {
      for (const auto& row : page.rows)
        found.push_back(row.correction.value());
    }
    return found;
  };
  const double in_2026 = field_of(ridge, 0, february_2026).declination().degrees_east();
  const double in_1978 = field_of(ridge, 0, 1978 + 44.0 / 365).declination().degrees_east();
  CHECK(corrections({ridge, 0, {2026, 2, 14}}) == std::vector{0.0, in_1978});
  CHECK(corrections({ridge, 0, {1978, 2, 14}}) == std::vector{in_2026, 0.0});
  CHECK(corrections({ridge, 1, {2026, 2, 14}}) == std::vector{in_2026, in_1978});
  CHECK(corrections({{-44.6892, 169.0144}, 0, {2026, 2, 14}}) == std::vector{in_2026, in_1978});
}
