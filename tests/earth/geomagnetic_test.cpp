// SPDX-License-Identifier: MIT
// The field of the built-in models: published values, another evaluation, seams and limits.
#include <lodebook/earth/geomagnetic.hpp>

#include <GeographicLib/Geocentric.hpp>
#include <GeographicLib/MagneticModel.hpp>
#include <catch.hpp>
#include <cmath>
#include <fstream>
#include <map>
#include <random>
#include <references/rows.hpp>
#include <scratch.hpp>
#include <sstream>

namespace {

using namespace lodebook;
using earth::MagneticField;
using earth::Position;
using test::number;
using test::ReferenceRow;

double degrees_between(double a, double b) {
  return std::abs(std::remainder(a - b, 360.0));
}

MagneticField field(double latitude, double longitude, double height_m, double year) {
  const auto found = earth::magnetic_field({latitude, longitude}, height_m, year);
  REQUIRE(found);
  return *found;
}

double declination_of(const MagneticField& field) {
  return field.declination().degrees_east();
}

std::vector<double> numbers(const std::string& text) {
  std::vector<double> values;
  for (const std::string& word : test::split(text, ' '))
    values.push_back(number(word));
  return values;
}

/// The field of a geodetic input: year, height in km, latitude, longitude.
MagneticField field_of_row(const ReferenceRow& row) {
  const std::vector<double> in = numbers(row.input);
  REQUIRE(in.size() == 4);
  return field(in[2], in[3], in[1] * 1000, in[0]);
}

void check_direction(const ReferenceRow& row) {
  const MagneticField found = field_of_row(row);
  const std::vector<double> expected = numbers(row.expected);
  REQUIRE(expected.size() == 2);
  CHECK(degrees_between(declination_of(found), expected[0]) <= row.tolerance);
  CHECK(std::abs(found.magnetic_inclination() - expected[1]) <= row.tolerance);
}

void check_components(const ReferenceRow& row) {
  const MagneticField found = field_of_row(row);
  const std::vector<double> expected = numbers(row.expected);
  REQUIRE(expected.size() == 3);
  CHECK(std::abs(found.north_nt() - expected[0]) <= row.tolerance);
  CHECK(std::abs(found.east_nt() - expected[1]) <= row.tolerance);
  CHECK(std::abs(found.down_nt() - expected[2]) <= row.tolerance);
}

/// North and down of the row point along the sphere; ours, along the ellipsoid.
void check_geocentric(const ReferenceRow& row) {
  const std::vector<double> in = numbers(row.input);
  const std::vector<double> expected = numbers(row.expected);
  REQUIRE(in.size() == 4);
  REQUIRE(expected.size() == 3);
  const double from_pole = in[1] * M_PI / 180;
  const double longitude = in[2] * M_PI / 180;
  const double radius = in[3] * 1000;
  double latitude_found = 0;
  double longitude_found = 0;
  double height = 0;
  GeographicLib::Geocentric::WGS84().Reverse(radius * std::sin(from_pole) * std::cos(longitude),
                                             radius * std::sin(from_pole) * std::sin(longitude),
                                             radius * std::cos(from_pole), latitude_found,
                                             longitude_found, height);
  const MagneticField found = field(latitude_found, longitude_found, height, in[0]);
  const double tilt = latitude_found * M_PI / 180 - (M_PI / 2 - from_pole);
  const double north = found.north_nt() * std::cos(tilt) - found.down_nt() * std::sin(tilt);
  const double down = found.down_nt() * std::cos(tilt) + found.north_nt() * std::sin(tilt);
  CHECK(std::abs(north - expected[0]) <= row.tolerance);
  CHECK(std::abs(found.east_nt() - expected[1]) <= row.tolerance);
  CHECK(std::abs(down - expected[2]) <= row.tolerance);
}

void check_map(const ReferenceRow& row) {
  CHECK(degrees_between(declination_of(field_of_row(row)), number(row.expected)) <= row.tolerance);
}

/// The tables as another program would read them, for GeographicLib's own model of the field: its
/// files in a folder of their own.
class OwnModels {
 public:
  OwnModels() {
    for (const char* name : {"igrf12", "wmm2015v2", "wmm2020", "wmm2025"})
      write(name);
  }

  GeographicLib::MagneticModel model(const std::string& name) const {
    return GeographicLib::MagneticModel(name, folder_.path().string());
  }

 private:
  static constexpr int degree = 13;

  struct Epoch {
    // By order, then degree; GeographicLib leaves out the sines of order 0.
    std::vector<double> g = std::vector<double>(place(degree, degree) + 1);
    std::vector<double> h = std::vector<double>(place(degree, degree) - degree);
    void set(int n, int m, double cosine, double sine) {
      g[place(n, m)] = cosine;
      if (m > 0) h[place(n, m) - degree - 1] = sine;
    }
  };
  static std::size_t place(int n, int m) {
    return static_cast<std::size_t>(m * degree - m * (m - 1) / 2 + n);
  }

  void write(const std::string& name) const {
    std::ifstream table(std::string(LODEBOOK_DATA "/geomagnetic/") + name + ".txt");
    REQUIRE(table);
    std::map<double, Epoch> epochs;
    Epoch rates;
    for (std::string line; std::getline(table, line);) {
      if (line.starts_with('#')) continue;
      std::istringstream words(line);
      double epoch = 0;
      int n = 0;
      int m = 0;
      double g = 0;
      double h = 0;
      REQUIRE(words >> epoch >> n >> m >> g >> h);
      epochs[epoch].set(n, m, g, h);
      double g_rate = 0;
      double h_rate = 0;
      if (words >> g_rate >> h_rate) rates.set(n, m, g_rate, h_rate);
    }
    std::ofstream about(folder_ / (name + ".wmm"));
    about << "WMMF-2\nName " << name << "\nRadius 6371200\nNumModels " << epochs.size()
          << "\nEpoch " << epochs.begin()->first << "\nDeltaEpoch 5\nMinTime 1900\nMaxTime 2030\n"
          << "MinHeight -10000\nMaxHeight 1000000\nNormalization schmidt\nByteOrder little\n"
          << "ID LODEBOOK\n";
    std::ofstream coefficients(folder_ / (name + ".wmm.cof"), std::ios::binary);
    coefficients << "LODEBOOK";
    for (const auto& [epoch, values] : epochs)
      append(coefficients, values);
    append(coefficients, rates);
  }
  static void append(std::ofstream& out, const Epoch& epoch) {
    const int size[2] = {degree, degree};
    out.write(reinterpret_cast<const char*>(size), sizeof size);
    for (const std::vector<double>* values : {&epoch.g, &epoch.h})
      out.write(reinterpret_cast<const char*>(values->data()),
                static_cast<std::streamsize>(values->size() * sizeof(double)));
  }

  test::Scratch folder_;
};

/// What GeographicLib makes of one of those models.
struct Elements {
  double horizontal = 0;
  double total = 0;
  double declination = 0;
  double inclination = 0;
  double declination_rate = 0;
};

Elements elements(const GeographicLib::MagneticModel& model, const Position& at, double height,
                  double year) {
  double field[3];
  double rate[3];
  model(year, at.latitude, at.longitude, height, field[0], field[1], field[2], rate[0], rate[1],
        rate[2]);
  Elements found;
  double unused[3];
  GeographicLib::MagneticModel::FieldComponents(field[0], field[1], field[2], rate[0], rate[1],
                                                rate[2], found.horizontal, found.total,
                                                found.declination, found.inclination, unused[0],
                                                unused[1], found.declination_rate, unused[2]);
  return found;
}

/// The largest change of the declination at a moment, degrees, where the field is not weak.
double seam(double year) {
  double largest = 0;
  for (int latitude = -89; latitude <= 89; latitude += 2) {
    for (int longitude = -180; longitude < 180; longitude += 2) {
      const MagneticField before = field(latitude, longitude, 0, std::nextafter(year, 0));
      const MagneticField after = field(latitude, longitude, 0, year);
      if (std::min(before.horizontal_nt(), after.horizontal_nt()) < earth::sluggish_below_nt)
        continue;
      largest = std::max(largest, degrees_between(declination_of(before), declination_of(after)));
    }
  }
  return largest;
}

}  // namespace

TEST_CASE("the field agrees with every published value") {
  const std::map<std::string, void (*)(const ReferenceRow&)> checks = {
      {"direction", check_direction},
      {"components", check_components},
      {"geocentric", check_geocentric},
      {"map", check_map}};
  std::map<std::string, int> rows;
  for (const ReferenceRow& row : test::reference_rows("geomagnetic.txt")) {
    INFO(row.at << ": " << row.input << " (" << row.source << ")");
    REQUIRE(checks.count(row.check) == 1);
    checks.at(row.check)(row);
    ++rows[row.check];
  }
  CHECK(rows.size() == checks.size());
}

TEST_CASE("another evaluation of the same tables gives the same declination") {
  const OwnModels models;
  const auto igrf = models.model("igrf12");
  const auto wmm2015 = models.model("wmm2015v2");
  const auto wmm2020 = models.model("wmm2020");
  const auto wmm2025 = models.model("wmm2025");
  constexpr unsigned seed = 20300101;
  INFO("seed " << seed);
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> sine(-1, 1);
  std::uniform_real_distribution<double> longitudes(-180, 180);
  std::uniform_real_distribution<double> heights(-400, 9000);
  std::uniform_real_distribution<double> years(1900, 2030);
  for (int i = 0; i < 2000; ++i) {
    const double latitude = std::asin(sine(random)) * 180 / M_PI;
    const double longitude = longitudes(random);
    const double height = heights(random);
    const double year = years(random);
    const auto& model = year < 2015   ? igrf
                        : year < 2020 ? wmm2015
                        : year < 2025 ? wmm2020
                                      : wmm2025;
    const Elements other = elements(model, {latitude, longitude}, height, year);
    INFO(latitude << " " << longitude << " " << height << " m, " << year);
    const MagneticField found = field(latitude, longitude, height, year);
    CHECK(degrees_between(declination_of(found), other.declination) < 0.001);
    CHECK(std::abs(found.magnetic_inclination() - other.inclination) < 0.001);
    CHECK(std::abs(found.horizontal_nt() - other.horizontal) < 0.01);
    CHECK(std::abs(found.total_nt() - other.total) < 0.01);
    const auto change = earth::declination_change({latitude, longitude}, height, year);
    REQUIRE(change);
    CHECK(std::abs(*change - other.declination_rate) <
          1e-6 * std::max(1.0, std::abs(other.declination_rate)));
  }
}

TEST_CASE(
    "only where one model follows another does the declination jump, and by what is documented") {
  // docs/mathematics.md; where the horizontal field is 6000 nT or more.
  CHECK(seam(2015) < 0.40);
  CHECK(seam(2020) < 0.18);
  CHECK(seam(2025) < 0.60);
  CHECK(seam(2015) > 0.3);  // the figure in the documentation is the jump, and no mere bound
  CHECK(seam(2020) > 0.1);
  CHECK(seam(2025) > 0.5);
  for (int year = 1905; year < 2030; ++year) {
    if (year == 2015 || year == 2020 || year == 2025) continue;
    INFO(year);
    CHECK(degrees_between(declination_of(field(-45, 170, 0, std::nextafter(year, 0))),
                          declination_of(field(-45, 170, 0, year))) < 1e-9);
  }
}

TEST_CASE("each model holds from its epoch on, and nothing is known outside 1900 to 2030") {
  const Position place{-45, 170};
  using enum earth::FieldModel;
  CHECK(field(-45, 170, 0, 1900).model() == igrf12);
  CHECK(field(-45, 170, 0, 2014.9999).model() == igrf12);
  CHECK(field(-45, 170, 0, 2015).model() == wmm2015v2);
  CHECK(field(-45, 170, 0, 2020).model() == wmm2020);
  CHECK(field(-45, 170, 0, 2025).model() == wmm2025);
  CHECK(field(-45, 170, 0, 2030).model() == wmm2025);
  for (const double year : {1899.999, 2030.001, std::nan(""), -1.0}) {
    CHECK(!earth::magnetic_field(place, 0, year));
    CHECK(!earth::declination_change(place, 0, year));
    CHECK(!earth::year_of_declination(place, 0, Declination(), year));
  }
}

TEST_CASE("the uncertainty is that of the technical reports") {
  const auto sigma = [](double horizontal, earth::FieldModel model) {
    return MagneticField(horizontal, 0, 0, model).declination_sigma();
  };
  using enum earth::FieldModel;
  CHECK(sigma(20000, wmm2025) == Approx(std::hypot(0.26, 5417.0 / 20000)));
  CHECK(sigma(20000, wmm2020) == Approx(std::hypot(0.26, 5625.0 / 20000)));
  CHECK(sigma(20000, wmm2015v2) == Approx(std::hypot(0.24, 5432.0 / 20000)));
  CHECK(sigma(20000, igrf12) == sigma(20000, wmm2015v2));
  CHECK(sigma(1, wmm2025) == 180);
  CHECK(sigma(0, wmm2025) == 180);
}

TEST_CASE("heights that the models are not for have no field") {
  for (const double height : {-100'001.0, 850'001.0, -6378137.0, 1e9, std::nan("")}) {
    CHECK(!earth::magnetic_field({0, 0}, height, 2026));
    CHECK(!earth::declination_change({0, 0}, height, 2026));
    CHECK(!earth::year_of_declination({0, 0}, height, Declination(), 2026));
  }
  CHECK(earth::magnetic_field({0, 0}, -100'000, 2026));
  CHECK(earth::magnetic_field({0, 0}, 850'000, 2026));
}

TEST_CASE("a needle is steady, sluggish or useless by the horizontal field") {
  const auto needle = [](double horizontal) {
    return MagneticField(0, horizontal, 50000, earth::FieldModel::wmm2025).needle();
  };
  CHECK(needle(6000) == earth::Needle::steady);
  CHECK(needle(5999) == earth::Needle::sluggish);
  CHECK(needle(2000) == earth::Needle::sluggish);
  CHECK(needle(1999) == earth::Needle::useless);
}

TEST_CASE("at the poles there is a field, in the directions of the meridian asked for") {
  for (const double latitude : {90.0, -90.0}) {
    const MagneticField here = field(latitude, 0, 0, 2026);
    const MagneticField turned = field(latitude, 30, 0, 2026);
    CHECK(std::isfinite(declination_of(here)));
    CHECK(here.horizontal_nt() == Approx(turned.horizontal_nt()));
    const double turn = latitude > 0 ? -30 : 30;
    CHECK(degrees_between(declination_of(turned) - declination_of(here), -turn) < 1e-6);
  }
}

TEST_CASE("the year of a declination is the last one before the date that had it") {
  const Position place{55.64, -62.41};  // from 31.5 W in 1978 the needle goes east
  const double declination = declination_of(field(place.latitude, place.longitude, 0, 1993.4));
  const auto later = earth::year_of_declination(place, 0, *Declination::west(-declination), 2020.5);
  REQUIRE(later);
  CHECK(std::abs(*later - 1993.4) < 0.1);
  // Not yet true in 1950, nor earlier: the year after it is given.
  const auto after = earth::year_of_declination(place, 0, *Declination::west(24), 1978.5);
  REQUIRE(after);
  CHECK(*after > 1978.5);
  CHECK(degrees_between(declination_of(field(place.latitude, place.longitude, 0, *after)), -24) <
        0.02);
  CHECK(!earth::year_of_declination(place, 0, *Declination::east(100), 1978.5));
}
