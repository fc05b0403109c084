// SPDX-License-Identifier: MIT
// The shortest closed run of a network of legs, again and again, while its stations become tied.
#pragma once

#include <cstddef>
#include <limits>
#include <map>
#include <optional>
#include <queue>
#include <span>
#include <vector>

#include "traverse_runs.hpp"

namespace lodebook::reduction {

/// Stations, the legs that meet there, and how far both have got into runs. Legs from a station to
/// itself are no part of it.
struct Network {
  std::span<const TraverseLeg> legs;
  /// By station, in input order.
  std::vector<std::vector<std::size_t>> legs_at;
  /// By station: known, or in a run.
  std::vector<bool> tied;
  /// By leg: may be in a closed run that is still to come.
  std::vector<bool> may_close;

  std::size_t other_end(std::size_t leg, std::size_t station) const {
    return legs[leg].from == station ? legs[leg].to : legs[leg].from;
  }
};

/// By leg: one without which a part of the network hangs together with no tied station, all of
/// which count as one place. It closes no run, also when more stations have become tied. (R. E.
/// Tarjan 1974, A note on finding the bridges of a graph, Information Processing Letters 2, 160;
/// from memory.)
std::vector<bool> bridges_of(const Network& network);

/// Searches from all tied stations at once, outwards. Each first leg spreads a tree of its own; a
/// leg between two trees closes a run. The order of search is that of a search anew: nearest
/// stations first, of these the one whose way, leg by leg, comes first in input order. So each
/// station has one way, whenever it was found, and only stations whose way gets shorter, or begins
/// with another leg, are looked at again. They wait until a run as long as theirs is asked for.
class ClosedRuns {
 public:
  /// `network` must outlive it.
  explicit ClosedRuns(const Network& network);

  /// A station has become tied.
  void begin_at(std::size_t station);
  /// One with the fewest legs, `most_legs` at most; of equals the one whose legs come first.
  std::optional<TraverseRun> best(std::size_t most_legs = std::numeric_limits<std::size_t>::max());
  /// As if no station had ever become tied.
  void clear();

 private:
  /// A leg between two trees, and all legs of the run that it closes, ascending.
  struct Offer {
    std::vector<std::size_t> legs;
    std::size_t leg = 0;
  };
  struct IsWorse {
    bool operator()(const Offer& a, const Offer& b) const {
      return a.legs.size() != b.legs.size() ? a.legs.size() > b.legs.size() : a.legs > b.legs;
    }
  };

  void reach(std::size_t station, std::size_t depth, std::size_t first, std::size_t last);
  void spread();
  bool is_better(std::size_t next, std::size_t station, std::size_t leg) const;
  bool comes_before(std::size_t a, std::size_t leg_a, std::size_t b, std::size_t leg_b) const;
  bool closes(std::size_t leg) const;
  void offer(std::size_t leg);
  std::vector<std::size_t> legs_closed_by(std::size_t leg) const;
  TraverseRun run_closed_by(std::size_t leg) const;

  const Network& network_;
  // By station: how many legs from a tied one, the first of these legs and the last.
  std::vector<std::size_t> depth_;
  std::vector<std::size_t> first_;
  std::vector<std::size_t> last_;
  std::vector<std::size_t> reached_;
  /// Stations whose way has changed and was not followed up, by their depths.
  std::map<std::size_t, std::vector<std::size_t>> changed_;
  std::priority_queue<Offer, std::vector<Offer>, IsWorse> offers_;
};

}  // namespace lodebook::reduction
