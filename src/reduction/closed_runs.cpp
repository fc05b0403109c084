// SPDX-License-Identifier: MIT
#include "closed_runs.hpp"

#include <algorithm>

namespace lodebook::reduction {
namespace {

constexpr std::size_t not_reached = std::numeric_limits<std::size_t>::max();

/// The way that most of its legs go; of two as many, that of the first leg.
void turn_with_most_legs(TraverseRun& run, std::span<const TraverseLeg> legs) {
  std::size_t forward = 0;
  bool is_first_forward = false;
  std::size_t first = run.legs.front();
  for (std::size_t i = 0; i < run.legs.size(); ++i) {
    const bool is_forward = legs[run.legs[i]].from == run.stations[i];
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

}  // namespace

std::vector<bool> bridges_of(const Network& network) {
  constexpr std::size_t no_leg = std::numeric_limits<std::size_t>::max();
  struct Visit {
    std::size_t station;
    std::size_t arrival;
    std::size_t next = 0;  // among the station's legs
  };
  std::vector<bool> is_bridge(network.legs.size());
  // By station: its number in the order of visits, and the lowest that is met from there on.
  std::vector<std::size_t> number(network.tied.size());
  std::vector<std::size_t> lowest(network.tied.size());
  std::size_t count = 1;
  std::vector<Visit> way;
  const auto enter = [&](std::size_t station, std::size_t arrival) {
    number[station] = lowest[station] = network.tied[station] ? 1 : ++count;
    way.push_back({station, arrival});
  };
  const auto leave = [&] {
    const Visit left = way.back();
    way.pop_back();
    if (way.empty()) return;
    const std::size_t before = way.back().station;
    if (lowest[left.station] > number[before]) is_bridge[left.arrival] = true;
    lowest[before] = std::min(lowest[before], lowest[left.station]);
  };
  const auto search_from = [&](std::size_t beginning) {
    enter(beginning, no_leg);
    while (!way.empty()) {
      Visit& here = way.back();
      if (here.next == network.legs_at[here.station].size()) {
        leave();
        continue;
      }
      const std::size_t leg = network.legs_at[here.station][here.next++];
      const std::size_t other = network.other_end(leg, here.station);
      // That of all tied stations is the first, and they begin the search.
      if (network.tied[other]) {
        if (leg != here.arrival) lowest[here.station] = 1;
      } else if (number[other] == 0) {
        enter(other, leg);
      } else if (leg != here.arrival) {
        lowest[here.station] = std::min(lowest[here.station], number[other]);
      }
    }
  };
  for (std::size_t station = 0; station < network.tied.size(); ++station) {
    if (network.tied[station]) search_from(station);
  }
  for (std::size_t station = 0; station < network.tied.size(); ++station) {
    if (number[station] == 0) search_from(station);
  }
  return is_bridge;
}

ClosedRuns::ClosedRuns(const Network& network)
    : network_(network),
      depth_(network.tied.size(), not_reached),
      first_(network.tied.size()),
      last_(network.tied.size()) {}

void ClosedRuns::begin_at(std::size_t station) {
  reach(station, 0, 0, 0);
}

void ClosedRuns::clear() {
  for (const std::size_t station : reached_)
    depth_[station] = not_reached;
  reached_.clear();
  changed_.clear();
  offers_ = {};
}

std::optional<TraverseRun> ClosedRuns::best(std::size_t most_legs) {
  for (;;) {
    const std::size_t limit =
        offers_.empty() ? most_legs : std::min(most_legs, offers_.top().legs.size());
    // Two stations of one depth, and the leg between them, are the least that is still to come.
    if (!changed_.empty() && 2 * changed_.begin()->first + 1 <= limit) {
      spread();
      continue;
    }
    if (offers_.empty() || offers_.top().legs.size() > most_legs) return std::nullopt;
    const Offer& top = offers_.top();
    // Of what has changed since, it was offered again.
    if (network_.may_close[top.leg] && closes(top.leg) && legs_closed_by(top.leg) == top.legs)
      return run_closed_by(top.leg);
    offers_.pop();
  }
}

void ClosedRuns::reach(std::size_t station, std::size_t depth, std::size_t first,
                       std::size_t last) {
  if (depth_[station] == not_reached) reached_.push_back(station);
  depth_[station] = depth;
  first_[station] = first;
  last_[station] = last;
  changed_[depth].push_back(station);
}

/// Follows up the nearest stations of those that wait.
void ClosedRuns::spread() {
  const auto nearest = changed_.extract(changed_.begin());
  const std::size_t depth = nearest.key();
  std::vector<std::size_t> stations = nearest.mapped();
  std::ranges::sort(stations);
  stations.erase(std::unique(stations.begin(), stations.end()), stations.end());
  // Some have come nearer since.
  std::erase_if(stations, [&](std::size_t station) { return depth_[station] != depth; });

  std::vector<std::size_t> behind;
  for (const std::size_t station : stations) {
    for (const std::size_t leg : network_.legs_at[station]) {
      const std::size_t next = network_.other_end(leg, station);
      if (!network_.may_close[leg] || network_.tied[next] || !is_better(next, station, leg))
        continue;
      reach(next, depth + 1, depth == 0 ? leg : first_[station], leg);
      behind.push_back(next);
    }
  }
  for (const std::size_t station : stations) {
    for (const std::size_t leg : network_.legs_at[station]) {
      const std::size_t other = depth_[network_.other_end(leg, station)];
      if (other == depth || other == depth + 1) offer(leg);
    }
  }
  for (const std::size_t station : behind) {
    for (const std::size_t leg : network_.legs_at[station]) {
      if (depth_[network_.other_end(leg, station)] == depth) offer(leg);
    }
  }
}

/// Whether the way to `next` by `leg` from `station` takes the place of that which it has.
bool ClosedRuns::is_better(std::size_t next, std::size_t station, std::size_t leg) const {
  const std::size_t depth = depth_[station] + 1;
  if (depth_[next] != depth) return depth < depth_[next];
  const std::size_t last = last_[next];
  // It has that way, of which something before `station` has changed.
  if (last == leg) return true;
  return comes_before(station, leg, network_.other_end(last, next), last);
}

/// Of two ways equally long: by `leg_a` behind the way to `a`, before that by `leg_b` behind `b`'s.
bool ClosedRuns::comes_before(std::size_t a, std::size_t leg_a, std::size_t b,
                              std::size_t leg_b) const {
  if (!network_.tied[a] && first_[a] != first_[b]) return first_[a] < first_[b];
  bool before = leg_a < leg_b;
  while (a != b && !network_.tied[a]) {
    if (last_[a] != last_[b]) before = last_[a] < last_[b];
    a = network_.other_end(last_[a], a);
    b = network_.other_end(last_[b], b);
  }
  return before;
}

/// Between two trees, or a tree and a tied station.
bool ClosedRuns::closes(std::size_t leg) const {
  const auto& [from, to] = std::pair(network_.legs[leg].from, network_.legs[leg].to);
  if (network_.tied[from]) return network_.tied[to] || last_[to] != leg;
  if (network_.tied[to]) return last_[from] != leg;
  return first_[from] != first_[to];
}

void ClosedRuns::offer(std::size_t leg) {
  if (network_.may_close[leg] && closes(leg)) offers_.push({legs_closed_by(leg), leg});
}

std::vector<std::size_t> ClosedRuns::legs_closed_by(std::size_t leg) const {
  std::vector<std::size_t> legs = {leg};
  for (std::size_t at : {network_.legs[leg].from, network_.legs[leg].to}) {
    for (; !network_.tied[at]; at = network_.other_end(last_[at], at))
      legs.push_back(last_[at]);
  }
  std::ranges::sort(legs);
  return legs;
}

TraverseRun ClosedRuns::run_closed_by(std::size_t leg) const {
  TraverseRun run;
  const auto follow = [&](std::size_t at) {
    run.stations.push_back(at);
    while (!network_.tied[at]) {
      run.legs.push_back(last_[at]);
      at = network_.other_end(last_[at], at);
      run.stations.push_back(at);
    }
  };
  follow(network_.legs[leg].from);
  std::ranges::reverse(run.stations);
  std::ranges::reverse(run.legs);
  run.legs.push_back(leg);
  follow(network_.legs[leg].to);
  run.kind =
      run.stations.front() == run.stations.back() ? Traverse::Kind::loop : Traverse::Kind::between;
  turn_with_most_legs(run, network_.legs);
  return run;
}

}  // namespace lodebook::reduction
