#pragma once

namespace dartwright::tools {

/// A signal that ends the program (SIGHUP, SIGINT, SIGTERM; those that are ignored stay so) takes the files
/// with it that were begun and not finished. A reader that goes away and a file that grows beyond its limit
/// are told by the write that fails, not by a signal. Once, at the start.
void prepare_for_signals();

}  // namespace dartwright::tools
