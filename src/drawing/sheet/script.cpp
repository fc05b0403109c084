// SPDX-License-Identifier: MIT
#include "parts.hpp"

namespace lodebook::drawing {

// No `<` and no `&`, so that it is the same text in HTML and in XML. Whoever changes it renews the
// hash, or no browser runs it: a test says which.
const std::string_view sheet_script = R"js(
'use strict';
(function () {
  const places = new Map();
  for (const element of document.querySelectorAll('[data-source]')) {
    const source = element.dataset.source;
    if (!places.has(source)) places.set(source, []);
    places.get(source).push(element);
  }
  let hovered = null;
  let focused = null;
  let marked = null;
  function source_at(target) {
    const element = target instanceof Element ? target.closest('[data-source]') : null;
    return element ? element.dataset.source : null;
  }
  function mark() {
    const wanted = hovered === null ? focused : hovered;
    if (wanted === marked) return;
    for (const element of places.get(marked) || []) element.classList.remove('marked');
    for (const element of places.get(wanted) || []) element.classList.add('marked');
    marked = wanted;
  }
  document.addEventListener('mouseover', function (event) {
    hovered = source_at(event.target);
    mark();
  });
  document.documentElement.addEventListener('mouseleave', function () {
    hovered = null;
    mark();
  });
  document.addEventListener('focusin', function (event) {
    const picture = event.target.closest('figure');
    if (picture === null) focused = source_at(event.target);
    mark();
  });
}());
)js";

const std::string_view sheet_script_hash = "saz6KEjU2KKqx0CLmZ+19PGkr9i3YGJRIt4CPjz0jyM=";

}  // namespace lodebook::drawing
