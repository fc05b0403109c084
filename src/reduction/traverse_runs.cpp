// SPDX-License-Identifier: MIT
#include "traverse_runs.hpp"

#include <algorithm>
#include <functional>
#include <optional>
#include <queue>
#include <utility>

#include "closed_runs.hpp"

namespace lodebook::reduction {
namespace {

/// A queue of legs, the lowest number first.
using FirstLegs = std::priority_queue<std::size_t, std::vector<std::size_t>, std::greater<>>;

/// Searching up to this many legs at one station repeatedly costs little.
constexpr std::size_t few_legs = 8;

/// Connected stations, and the first of the legs between them.
struct Group {
  std::vector<std::size_t> stations;
  std::size_t first_leg = 0;
};

Network network_of(std::span<const TraverseStation> stations, std::span<const TraverseLeg> legs) {
  Network network;
  network.legs = legs;
  network.legs_at.resize(stations.size());
  for (const TraverseStation& station : stations)
    network.tied.push_back(station.position.has_value());
  for (std::size_t leg = 0; leg < legs.size(); ++leg) {
    if (legs[leg].from == legs[leg].to) continue;
    network.legs_at[legs[leg].from].push_back(leg);
    network.legs_at[legs[leg].to].push_back(leg);
  }
  network.may_close = bridges_of(network);
  network.may_close.flip();
  return network;
}

class Planner {
 public:
  Planner(std::span<const TraverseStation> stations, std::span<const TraverseLeg> legs);
  std::vector<TraverseRun> plan();

 private:
  Group group_around(std::size_t first_leg);
  void mark_dead_ends(const Group& group);
  void plan_group(const Group& group);
  std::optional<TraverseRun> free_loop(const Group& group);
  std::optional<TraverseRun> way_to_a_loop();
  void carry_dead_ends(const Group& group);
  void take(TraverseRun run);
  void tie(std::size_t station);
  void end(std::size_t leg);

  /// Whether a leg is part of a closed run that is still to come, or of the way to one.
  bool leads_on(std::size_t leg) const { return !used_[leg] && !is_dead_end_[leg]; }
  std::size_t leg_behind(std::size_t station, std::size_t arrival) const;

  std::span<const TraverseLeg> legs_;
  Network network_;
  ClosedRuns closed_runs_;
  std::vector<bool> grouped_;      // by station
  std::vector<bool> used_;         // by leg
  std::vector<bool> is_dead_end_;  // by leg
  std::vector<std::size_t> ways_;  // by station: how many of its legs lead on
  /// Legs from tied stations that are in no closed run; they may lead to loops of untied stations.
  FirstLegs bridges_;
  std::vector<TraverseRun> runs_;
};

Planner::Planner(std::span<const TraverseStation> stations, std::span<const TraverseLeg> legs)
    : legs_(legs),
      network_(network_of(stations, legs)),
      closed_runs_(network_),
      grouped_(stations.size()),
      used_(legs.size()),
      is_dead_end_(legs.size()) {
  for (const auto& at_station : network_.legs_at)
    ways_.push_back(at_station.size());
}

std::vector<TraverseRun> Planner::plan() {
  for (std::size_t leg = 0; leg < legs_.size(); ++leg) {
    if (legs_[leg].from != legs_[leg].to && !grouped_[legs_[leg].from])
      plan_group(group_around(leg));
  }
  return std::move(runs_);
}

Group Planner::group_around(std::size_t first_leg) {
  Group group;
  group.first_leg = first_leg;
  const auto reach = [&](std::size_t station) {
    if (!grouped_[station]) group.stations.push_back(station);
    grouped_[station] = true;
  };
  reach(legs_[first_leg].from);
  for (std::size_t i = 0; i < group.stations.size(); ++i) {
    const std::size_t station = group.stations[i];
    for (const std::size_t leg : network_.legs_at[station])
      reach(network_.other_end(leg, station));
  }
  return group;
}

void Planner::end(std::size_t leg) {
  if (!leads_on(leg)) return;
  --ways_[legs_[leg].from];
  --ways_[legs_[leg].to];
  network_.may_close[leg] = false;
}

/// The first leg, other than `arrival`, that leads on from `station`. There must be one.
std::size_t Planner::leg_behind(std::size_t station, std::size_t arrival) const {
  return *std::ranges::find_if(network_.legs_at[station],
                               [&](std::size_t leg) { return leads_on(leg) && leg != arrival; });
}

// A leg that is the only one left at an untied station can never close, so that searches can leave
// it out. Afterwards no such station is left, and none appears later, because a closed run ties all
// its stations.
void Planner::mark_dead_ends(const Group& group) {
  for (std::size_t station : group.stations) {
    while (!network_.tied[station] && ways_[station] == 1) {
      const std::size_t leg = leg_behind(station, legs_.size());
      end(leg);
      is_dead_end_[leg] = true;
      station = network_.other_end(leg, station);
    }
  }
}

void Planner::plan_group(const Group& group) {
  mark_dead_ends(group);
  bool any_tied = false;
  for (const std::size_t station : group.stations) {
    if (!network_.tied[station]) continue;
    any_tied = true;
    tie(station);
  }
  if (!any_tied) {
    if (auto loop = free_loop(group)) {
      take(*std::move(loop));
    } else {
      tie(legs_[group.first_leg].from);
    }
  }
  for (;;) {
    std::optional<TraverseRun> run = closed_runs_.best();
    if (!run) run = way_to_a_loop();
    if (!run) break;
    take(*std::move(run));
  }
  carry_dead_ends(group);
}

// A loop passes through a station where ways part, unless it is the only loop, so it is enough to
// try such stations. Those with the most legs come first. After the search from a station, all
// loops through it are known, and if it has many legs, later searches leave these out.
std::optional<TraverseRun> Planner::free_loop(const Group& group) {
  std::vector<std::size_t> tried;
  for (const std::size_t station : group.stations) {
    if (ways_[station] > 2) tried.push_back(station);
  }
  if (tried.empty()) {
    const auto on_any = std::ranges::find_if(
        group.stations, [&](std::size_t station) { return ways_[station] == 2; });
    if (on_any == group.stations.end()) return std::nullopt;
    tried.push_back(*on_any);
  }
  std::ranges::stable_sort(tried, std::ranges::greater(),
                           [&](std::size_t station) { return ways_[station]; });

  std::optional<TraverseRun> best;
  std::vector<std::size_t> best_legs;
  std::vector<std::size_t> known;
  for (const std::size_t station : tried) {
    network_.tied[station] = true;
    closed_runs_.begin_at(station);
    auto loop = best ? closed_runs_.best(best_legs.size()) : closed_runs_.best();
    closed_runs_.clear();
    network_.tied[station] = false;
    for (const std::size_t leg : network_.legs_at[station]) {
      if (ways_[station] <= few_legs || !network_.may_close[leg]) continue;
      network_.may_close[leg] = false;
      known.push_back(leg);
    }
    if (!loop) continue;
    std::vector<std::size_t> legs = loop->legs;
    std::ranges::sort(legs);
    if (best && legs.size() == best_legs.size() && best_legs <= legs) continue;
    best = std::move(loop);
    best_legs = std::move(legs);
  }
  for (const std::size_t leg : known)
    network_.may_close[leg] = true;
  if (!best) return best;
  // A loop without a known station may begin anywhere: it begins with its first leg.
  std::vector<std::size_t>& legs = best->legs;
  const auto first = std::ranges::min_element(legs) - legs.begin();
  best->stations.pop_back();
  std::vector<std::size_t>& stations = best->stations;
  std::rotate(stations.begin(), stations.begin() + first, stations.end());
  std::rotate(legs.begin(), legs.begin() + first, legs.end());
  best->stations.push_back(best->stations.front());
  return best;
}

/// If no run closes but loops remain, each of them is reached by a single way. This has no branch
/// before the loop, or before the next such way, begins.
std::optional<TraverseRun> Planner::way_to_a_loop() {
  while (!bridges_.empty()) {
    std::size_t leg = bridges_.top();
    bridges_.pop();
    const bool from_tied = network_.tied[legs_[leg].from];
    if (!leads_on(leg) || from_tied == network_.tied[legs_[leg].to]) continue;
    TraverseRun run;
    std::size_t station = from_tied ? legs_[leg].from : legs_[leg].to;
    run.stations.push_back(station);
    for (;;) {
      station = network_.other_end(leg, station);
      run.stations.push_back(station);
      run.legs.push_back(leg);
      if (ways_[station] != 2) return run;
      leg = leg_behind(station, leg);
    }
  }
  return std::nullopt;
}

// Only trees at tied stations are left.
void Planner::carry_dead_ends(const Group& group) {
  FirstLegs beginnings;
  const auto begin_at = [&](std::size_t station) {
    for (const std::size_t leg : network_.legs_at[station]) {
      if (!used_[leg]) beginnings.push(leg);
    }
  };
  for (const std::size_t station : group.stations) {
    if (network_.tied[station]) begin_at(station);
  }
  while (!beginnings.empty()) {
    std::size_t leg = beginnings.top();
    beginnings.pop();
    if (used_[leg]) continue;
    TraverseRun run;
    run.stations.push_back(network_.tied[legs_[leg].from] ? legs_[leg].from : legs_[leg].to);
    for (;;) {
      const std::size_t station = network_.other_end(leg, run.stations.back());
      run.stations.push_back(station);
      run.legs.push_back(leg);
      const std::size_t arrival = leg;
      const auto next = std::ranges::find_if(network_.legs_at[station],
                                             [&](std::size_t on) { return on != arrival; });
      if (next == network_.legs_at[station].end()) break;
      leg = *next;
    }
    const std::vector<std::size_t> stations = run.stations;
    take(std::move(run));
    for (std::size_t i = 1; i < stations.size(); ++i)
      begin_at(stations[i]);
  }
}

void Planner::take(TraverseRun run) {
  for (const std::size_t leg : run.legs) {
    end(leg);
    used_[leg] = true;
  }
  for (const std::size_t station : run.stations) {
    if (!network_.tied[station]) tie(station);
  }
  runs_.push_back(std::move(run));
}

void Planner::tie(std::size_t station) {
  network_.tied[station] = true;
  closed_runs_.begin_at(station);
  for (const std::size_t leg : network_.legs_at[station]) {
    if (leads_on(leg) && !network_.may_close[leg]) bridges_.push(leg);
  }
}

}  // namespace

std::vector<TraverseRun> traverse_runs(std::span<const TraverseStation> stations,
                                       std::span<const TraverseLeg> legs) {
  return Planner(stations, legs).plan();
}

}  // namespace lodebook::reduction
