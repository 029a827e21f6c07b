#pragma once

namespace dartwright::tools {

/// Standard streams that are closed are held open by something that can be neither read nor written: else the
/// next file that is opened takes the number of one, and gets what is meant for it. Once, at the start,
/// before any file is opened.
void hold_closed_streams();

}  // namespace dartwright::tools
