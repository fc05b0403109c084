// SPDX-License-Identifier: MIT
#include "traverse_runs.hpp"

#include <algorithm>
#include <functional>
#include <optional>
#include <queue>
#include <utility>

namespace lodebook::reduction {
namespace {

/// Stations that legs connect, and those legs, in input order.
struct Group {
  std::vector<std::size_t> stations;
  std::vector<std::size_t> legs;
};

class Planner {
 public:
  Planner(std::span<const TraverseStation> stations, std::span<const TraverseLeg> legs);
  std::vector<TraverseRun> plan();

 private:
  Group group_around(std::size_t first_leg);
  void mark_dead_ends(const Group& group);
  void plan_group(const Group& group);
  void offer_free_loops(const Group& group, std::optional<TraverseRun>& best);
  void offer_closed_runs(const Group& group, std::optional<TraverseRun>& best);
  void offer(std::size_t station, std::size_t leg, std::optional<TraverseRun>& best) const;
  std::optional<TraverseRun> way_to_a_loop(const Group& group) const;
  void carry_dead_ends(const Group& group);
  void take(TraverseRun run);

  /// May still be part of a closed run, or lead to one.
  bool may_close(std::size_t leg) const { return !used_[leg] && !is_dead_end_[leg]; }
  std::size_t ways_to_close(std::size_t station) const;
  std::size_t other_end(std::size_t leg, std::size_t station) const {
    return legs_[leg].from == station ? legs_[leg].to : legs_[leg].from;
  }
  void turn_with_most_legs(TraverseRun& run) const;

  std::span<const TraverseLeg> legs_;
  std::vector<std::vector<std::size_t>> legs_at_;  // by station, in input order
  std::vector<bool> tied_;                         // by station: known, or in a run
  std::vector<bool> grouped_;                      // by station
  std::vector<bool> used_;                         // by leg
  std::vector<bool> is_dead_end_;                  // by leg
  // Of a search, by station: how many legs from a tied one (0: not reached), the first of these
  // legs and the last.
  std::vector<std::size_t> depth_;
  std::vector<std::size_t> first_;
  std::vector<std::size_t> last_;
  std::vector<TraverseRun> runs_;
};

Planner::Planner(std::span<const TraverseStation> stations, std::span<const TraverseLeg> legs)
    : legs_(legs),
      legs_at_(stations.size()),
      grouped_(stations.size()),
      used_(legs.size()),
      is_dead_end_(legs.size()),
      depth_(stations.size()),
      first_(stations.size()),
      last_(stations.size()) {
  for (const TraverseStation& station : stations)
    tied_.push_back(station.position.has_value());
  for (std::size_t leg = 0; leg < legs.size(); ++leg) {
    if (legs[leg].from == legs[leg].to) continue;
    legs_at_[legs[leg].from].push_back(leg);
    legs_at_[legs[leg].to].push_back(leg);
  }
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
  const auto reach = [&](std::size_t station) {
    if (!grouped_[station]) group.stations.push_back(station);
    grouped_[station] = true;
  };
  reach(legs_[first_leg].from);
  for (std::size_t i = 0; i < group.stations.size(); ++i) {
    const std::size_t station = group.stations[i];
    for (const std::size_t leg : legs_at_[station]) {
      reach(other_end(leg, station));
      if (legs_[leg].from == station) group.legs.push_back(leg);
    }
  }
  std::sort(group.legs.begin(), group.legs.end());
  return group;
}

std::size_t Planner::ways_to_close(std::size_t station) const {
  return static_cast<std::size_t>(std::count_if(legs_at_[station].begin(), legs_at_[station].end(),
                                                [&](std::size_t leg) { return may_close(leg); }));
}

// What ends at an untied station can never close, so searches need not go there. What is left
// leads on at every untied station, and goes on doing so, for a closed run ties all its stations.
void Planner::mark_dead_ends(const Group& group) {
  for (std::size_t station : group.stations) {
    while (!tied_[station] && ways_to_close(station) == 1) {
      const std::size_t leg =
          *std::find_if(legs_at_[station].begin(), legs_at_[station].end(),
                        [&](std::size_t candidate) { return may_close(candidate); });
      is_dead_end_[leg] = true;
      station = other_end(leg, station);
    }
  }
}

void Planner::plan_group(const Group& group) {
  mark_dead_ends(group);
  if (std::none_of(group.stations.begin(), group.stations.end(),
                   [&](std::size_t station) { return tied_[station]; })) {
    std::optional<TraverseRun> loop;
    offer_free_loops(group, loop);
    if (loop) {
      take(*std::move(loop));
    } else {
      tied_[legs_[group.legs.front()].from] = true;
    }
  }
  for (;;) {
    std::optional<TraverseRun> run;
    offer_closed_runs(group, run);
    if (!run) run = way_to_a_loop(group);
    if (!run) break;
    take(*std::move(run));
  }
  carry_dead_ends(group);
}

// The shortest loop passes through some station; it is enough to try those where ways part, for
// a loop without any is the only one.
void Planner::offer_free_loops(const Group& group, std::optional<TraverseRun>& best) {
  std::optional<std::size_t> on_any;
  bool is_only = true;
  const auto offer_through = [&](std::size_t station) {
    tied_[station] = true;
    offer_closed_runs(group, best);
    tied_[station] = false;
  };
  for (const std::size_t station : group.stations) {
    const std::size_t ways = ways_to_close(station);
    if (ways >= 2) on_any = station;
    if (ways < 3) continue;
    is_only = false;
    offer_through(station);
  }
  if (on_any && is_only) offer_through(*on_any);
  if (!best) return;
  // It has no beginning of its own: it begins with its first leg.
  std::vector<std::size_t>& legs = best->legs;
  const auto first = std::min_element(legs.begin(), legs.end()) - legs.begin();
  best->stations.pop_back();
  std::rotate(best->stations.begin(), best->stations.begin() + first, best->stations.end());
  std::rotate(legs.begin(), legs.begin() + first, legs.end());
  best->stations.push_back(best->stations.front());
}

// Searches from all tied stations at once, station by station outwards. Each first leg spreads a
// tree of its own; a leg between two trees closes a run, and one of these is a shortest one.
void Planner::offer_closed_runs(const Group& group, std::optional<TraverseRun>& best) {
  for (const std::size_t station : group.stations)
    depth_[station] = 0;
  std::vector<std::size_t> reached;
  for (const std::size_t leg : group.legs) {
    if (!may_close(leg)) continue;
    const auto [station, other] = std::pair(legs_[leg].from, legs_[leg].to);
    if (!tied_[station] && !tied_[other]) continue;
    if (tied_[station] && tied_[other]) {
      offer(station, leg, best);
      return;
    }
    const std::size_t next = tied_[station] ? other : station;
    if (depth_[next] != 0) {
      offer(next, leg, best);
      continue;
    }
    depth_[next] = 1;
    first_[next] = last_[next] = leg;
    reached.push_back(next);
  }
  for (std::size_t i = 0; i < reached.size(); ++i) {
    const std::size_t station = reached[i];
    if (best && 2 * depth_[station] + 1 > best->legs.size()) return;
    for (const std::size_t leg : legs_at_[station]) {
      const std::size_t next = other_end(leg, station);
      if (!may_close(leg) || tied_[next]) continue;
      if (depth_[next] == 0) {
        depth_[next] = depth_[station] + 1;
        first_[next] = first_[station];
        last_[next] = leg;
        reached.push_back(next);
      } else if (first_[next] != first_[station] &&
                 (!best || depth_[station] + 1 + depth_[next] <= best->legs.size())) {
        offer(station, leg, best);
      }
    }
  }
}

/// The run that `leg` closes, beyond the tree that has reached `station`.
void Planner::offer(std::size_t station, std::size_t leg, std::optional<TraverseRun>& best) const {
  TraverseRun run;
  const auto follow = [&](std::size_t at) {
    run.stations.push_back(at);
    while (!tied_[at]) {
      run.legs.push_back(last_[at]);
      at = other_end(last_[at], at);
      run.stations.push_back(at);
    }
  };
  follow(station);
  std::reverse(run.stations.begin(), run.stations.end());
  std::reverse(run.legs.begin(), run.legs.end());
  run.legs.push_back(leg);
  follow(other_end(leg, station));
  run.kind =
      run.stations.front() == run.stations.back() ? Traverse::Kind::loop : Traverse::Kind::between;
  const auto in_order = [](std::vector<std::size_t> legs) {
    std::sort(legs.begin(), legs.end());
    return legs;
  };
  if (best && (best->legs.size() < run.legs.size() || (best->legs.size() == run.legs.size() &&
                                                       in_order(best->legs) <= in_order(run.legs))))
    return;
  turn_with_most_legs(run);
  best = std::move(run);
}

void Planner::turn_with_most_legs(TraverseRun& run) const {
  std::size_t forward = 0;
  bool is_first_forward = false;
  std::size_t first = run.legs.front();
  for (std::size_t i = 0; i < run.legs.size(); ++i) {
    const bool is_forward = legs_[run.legs[i]].from == run.stations[i];
    if (is_forward) ++forward;
    if (run.legs[i] <= first) {
      first = run.legs[i];
      is_first_forward = is_forward;
    }
  }
  const std::size_t backward = run.legs.size() - forward;
  if (forward > backward || (forward == backward && is_first_forward)) return;
  std::reverse(run.legs.begin(), run.legs.end());
  std::reverse(run.stations.begin(), run.stations.end());
}

/// Where no run closes but loops remain, each hangs on a way of its own, without branches up to
/// where the loop or another such way begins.
std::optional<TraverseRun> Planner::way_to_a_loop(const Group& group) const {
  for (std::size_t leg : group.legs) {
    if (!may_close(leg) || tied_[legs_[leg].from] == tied_[legs_[leg].to]) continue;
    TraverseRun run;
    std::size_t station = tied_[legs_[leg].from] ? legs_[leg].from : legs_[leg].to;
    run.stations.push_back(station);
    for (;;) {
      station = other_end(leg, station);
      run.stations.push_back(station);
      run.legs.push_back(leg);
      if (ways_to_close(station) != 2) return run;
      leg = *std::find_if(legs_at_[station].begin(), legs_at_[station].end(),
                          [&](std::size_t next) { return may_close(next) && next != leg; });
    }
  }
  return std::nullopt;
}

// All that is left are trees on tied stations.
void Planner::carry_dead_ends(const Group& group) {
  std::priority_queue<std::size_t, std::vector<std::size_t>, std::greater<>> beginnings;
  const auto begin_at = [&](std::size_t station) {
    for (const std::size_t leg : legs_at_[station]) {
      if (!used_[leg]) beginnings.push(leg);
    }
  };
  for (const std::size_t station : group.stations) {
    if (tied_[station]) begin_at(station);
  }
  while (!beginnings.empty()) {
    std::size_t leg = beginnings.top();
    beginnings.pop();
    if (used_[leg]) continue;
    TraverseRun run;
    run.stations.push_back(tied_[legs_[leg].from] ? legs_[leg].from : legs_[leg].to);
    for (;;) {
      const std::size_t station = other_end(leg, run.stations.back());
      run.stations.push_back(station);
      run.legs.push_back(leg);
      const std::size_t arrival = leg;
      const auto next = std::find_if(legs_at_[station].begin(), legs_at_[station].end(),
                                     [&](std::size_t on) { return on != arrival; });
      if (next == legs_at_[station].end()) break;
      leg = *next;
    }
    const std::vector<std::size_t> stations = run.stations;
    take(std::move(run));
    for (std::size_t i = 1; i < stations.size(); ++i)
      begin_at(stations[i]);
  }
}

void Planner::take(TraverseRun run) {
  for (const std::size_t leg : run.legs)
    used_[leg] = true;
  for (const std::size_t station : run.stations)
    tied_[station] = true;
  runs_.push_back(std::move(run));
}

}  // namespace

std::vector<TraverseRun> traverse_runs(std::span<const TraverseStation> stations,
                                       std::span<const TraverseLeg> legs) {
  return Planner(stations, legs).plan();
}

}  // namespace lodebook::reduction
