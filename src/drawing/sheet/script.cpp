// SPDX-License-Identifier: MIT
#include "parts.hpp"

namespace lodebook::drawing {

// No `<` and no `&`, so that it is the same text in HTML and in XML. Whoever changes it renews the
// hash, or no browser runs it: a test says which.
const std::string_view sheet_script = R"js(
'use strict';
(function () {
  function sources_of(element) {
    const source = element.dataset.source;
    if (element.dataset.repeats === undefined) return [source];
    const log = source.replace(/\d+:\d+$/, '');
    return [source].concat(element.dataset.repeats.split(' ').map(function (place) {
      return log + place;
    }));
  }
  const places = new Map();
  for (const element of document.querySelectorAll('[data-source]')) {
    for (const source of sources_of(element)) {
      if (!places.has(source)) places.set(source, []);
      places.get(source).push(element);
    }
  }
  let hovered = [];
  let focused = [];
  let marked = [];
  function sources_at(target) {
    const element = target instanceof Element ? target.closest('[data-source]') : null;
    return element ? sources_of(element) : [];
  }
  function show(sources, is_marked) {
    for (const source of sources) {
      for (const element of places.get(source)) element.classList.toggle('marked', is_marked);
    }
  }
  function mark() {
    const wanted = hovered.length === 0 ? focused : hovered;
    if (wanted.join() === marked.join()) return;
    show(marked, false);
    show(wanted, true);
    marked = wanted;
  }
  document.addEventListener('mouseover', function (event) {
    hovered = sources_at(event.target);
    mark();
  });
  document.documentElement.addEventListener('mouseleave', function () {
    hovered = [];
    mark();
  });
  document.addEventListener('focusin', function (event) {
    const picture = event.target.closest('figure');
    if (picture === null) focused = sources_at(event.target);
    mark();
  });
}());
)js";

const std::string_view sheet_script_hash = "4S/vbo7ZT3Lv5tBOZ6y2KQouFFiMi5bGyvP8pJq8z9E=";

}  // namespace lodebook::drawing
