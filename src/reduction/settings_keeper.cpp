// SPDX-License-Identifier: MIT
#include "settings_keeper.hpp"

#include <lodebook/notebook/wording.hpp>
#include <lodebook/orientation/decimal.hpp>

namespace lodebook::reduction {

namespace {

using namespace notebook;

std::string east_or_west(Declination declination) {
  std::string text;
  append_east_or_west(text, declination.degrees_east(), 7);
  return text;
}

std::string said(const DeclinationSetting& setting) {
  switch (setting.from) {
    case DeclinationSetting::From::as_set:
      return "as-set";
    case DeclinationSetting::From::model:
      return "model";
    case DeclinationSetting::From::stated:
      break;
  }
  return east_or_west(setting.declination);
}

void set_declination(Settings& settings, const DeclinationSetting& said_declination, From from) {
  settings.declination_by = said_declination.from;
  settings.declination = settings.as_set() ? settings.set : said_declination.declination;
  settings.declination_sigma = said_declination.sigma;
  settings.declination_from = from;
  settings.declination_void = false;
}

void set_set(Settings& settings, Declination set, From from) {
  settings.set = set;
  settings.set_from = from;
  settings.set_void = false;
  if (settings.as_set()) settings.declination = set;
}

struct Apply {
  Settings& settings;
  const Source& source;

  bool operator()(const HeadingText& heading) const {
    const std::string_view text = source.text(heading.text);
    switch (heading.which) {
      case HeadingText::Which::area:
        settings.area = text;
        break;
      case HeadingText::Which::observer:
        settings.observer = text;
        break;
      case HeadingText::Which::instrument:
        settings.instrument = text;
        break;
    }
    return true;
  }
  bool operator()(const DateSetting& date) const {
    settings.date = date.date;
    settings.date_void = false;
    return true;
  }
  bool operator()(const DialSetting& dial) const {
    settings.dial = dial.notation;
    return true;
  }
  bool operator()(const SetSetting& set) const {
    set_set(settings, set.set, From::log);
    return true;
  }
  bool operator()(const DeclinationSetting& declination) const {
    set_declination(settings, declination, From::log);
    return true;
  }
  bool operator()(const RuleSetting& rule) const {
    settings.rule = rule.rule;
    settings.rule_from = From::log;
    return true;
  }
  bool operator()(const OrderSetting& order) const {
    if (order.planes != PlaneOrder::unstated) settings.plane_order = order.planes;
    if (order.lines != LineOrder::unstated) settings.line_order = order.lines;
    return true;
  }
  bool operator()(const PaceSetting& pace) const {
    settings.pace_m = pace.pace.metres(1);
    return true;
  }
  bool operator()(const DatumSetting& datum) const {
    settings.datum = source.text(datum.text);
    return true;
  }
  bool operator()(const AccuracySetting& accuracy) const {
    if (accuracy.bearing) settings.accuracy.bearing = *accuracy.bearing;
    if (accuracy.dip) settings.accuracy.dip = *accuracy.dip;
    if (accuracy.distance_percent) settings.accuracy.distance_percent = *accuracy.distance_percent;
    return true;
  }
  bool operator()(const AttractionSetting&) const { return settings.attraction_correct = true; }
  /// A void statement leaves what the options say.
  bool operator()(const Unread& unread) const {
    const OptionSettings& options = settings.options;
    switch (unread.setting) {
      case VoidSetting::set:
        set_set(settings, options.set.value_or(Declination()),
                options.set ? From::option : From::nowhere);
        return settings.set_void = true;
      case VoidSetting::declination:
        set_declination(settings, options.declination.value_or(DeclinationSetting{}),
                        options.declination ? From::option : From::nowhere);
        return settings.declination_void = true;
      case VoidSetting::rule:
        settings.rule = options.rule;
        settings.rule_from = options.rule ? From::option : From::nowhere;
        return true;
      case VoidSetting::order:
        settings.plane_order = PlaneOrder::unstated;
        settings.line_order = LineOrder::unstated;
        return true;
      case VoidSetting::pace:
        settings.pace_m.reset();
        return true;
      case VoidSetting::date:
        settings.date.reset();
        return settings.date_void = true;
      case VoidSetting::observer:
        settings.observer = {};
        return true;
      case VoidSetting::none:
        break;
    }
    return false;
  }
  template <class Other>
  bool operator()(const Other&) const {
    return false;
  }
};

}  // namespace

Settings initial_settings(const Options& options) {
  Settings settings;
  settings.options = {options.declination, options.set, options.rule};
  if (options.set) set_set(settings, *options.set, From::option);
  if (options.declination) set_declination(settings, *options.declination, From::option);
  if (options.rule) {
    settings.rule = options.rule;
    settings.rule_from = From::option;
  }
  return settings;
}

bool apply(Settings& settings, const Entry& entry, const Source& source) {
  return std::visit(Apply{settings, source}, entry.what);
}

std::optional<Diagnostic> overridden_option(const Entry& entry, const Options& options) {
  if (const auto* set = std::get_if<SetSetting>(&entry.what)) {
    if (options.set && *options.set != set->set)
      return wording::option_overridden("set", east_or_west(set->set), east_or_west(*options.set));
  } else if (const auto* declination = std::get_if<DeclinationSetting>(&entry.what)) {
    if (options.declination && said(*declination) != said(*options.declination))
      return wording::option_overridden("declination", said(*declination),
                                        said(*options.declination));
  } else if (const auto* rule = std::get_if<RuleSetting>(&entry.what)) {
    const auto name = [](HandRule which) { return which == HandRule::right ? "right" : "left"; };
    if (options.rule && *options.rule != rule->rule)
      return wording::option_overridden("rule", name(rule->rule), name(*options.rule));
  }
  return std::nullopt;
}

}  // namespace lodebook::reduction
