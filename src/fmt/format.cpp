// SPDX-License-Identifier: MIT
// The part of fmt that is no header: what its own library instantiates, and is used here.
#include <fmt/format-inl.h>

FMT_BEGIN_NAMESPACE
namespace detail {

template dragonbox::decimal_fp<float> dragonbox::to_decimal(float) noexcept;
template dragonbox::decimal_fp<double> dragonbox::to_decimal(double) noexcept;
template thousands_sep_result<char> thousands_sep_impl(locale_ref);
template char decimal_point_impl(locale_ref);
template void buffer<char>::append(const char*, const char*);
#if FMT_VERSION < 110'000  // later no template
template void vformat_to(buffer<char>&, string_view, basic_format_args<buffer_context<char>>,
                         locale_ref);
#endif

}  // namespace detail
FMT_END_NAMESPACE
