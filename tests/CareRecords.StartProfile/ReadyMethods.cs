using System.Diagnostics.Tracing;
using System.Reflection;

namespace CareRecords.StartProfile;

/// <summary>Takes down every method that the runtime makes ready while it listens.</summary>
internal sealed class ReadyMethods : EventListener
{
    private const EventKeywords Compiling = (EventKeywords)0x10;
    private const uint MadeAtRunTime = 1;

    // The runtime names a method by its address; only its own reflection turns that into a method where the type is generic.
    private static readonly MethodInfo MethodAt = typeof(object).GetType().GetMethods(BindingFlags.NonPublic | BindingFlags.Static)
        .Single(m => m.Name == "GetMethodBase" && m.GetParameters().Length == 1);
    private static readonly MethodInfo InfoOf = typeof(RuntimeMethodHandle).GetMethod("GetMethodInfo", BindingFlags.NonPublic | BindingFlags.Instance)
        ?? throw new InvalidOperationException("This runtime's reflection is another than the one this was written for.");

    private readonly Lock _guard = new();
    private readonly HashSet<ulong> _addresses = [];

    /// <summary>The methods so far.</summary>
    public IReadOnlyList<MethodBase> All()
    {
        ulong[] addresses;
        lock (_guard) addresses = [.. _addresses];
        return [.. addresses.Select(At).OfType<MethodBase>().Where(CanBeNamed)];
    }

    protected override void OnEventSourceCreated(EventSource eventSource)
    {
        if (eventSource.Name == "Microsoft-Windows-DotNETRuntime") EnableEvents(eventSource, EventLevel.Verbose, Compiling);
    }

    protected override void OnEventWritten(EventWrittenEventArgs eventData)
    {
        if (eventData is not { EventName: { } name, PayloadNames: { } names, Payload: { } values } || !name.StartsWith("MethodLoadVerbose", StringComparison.Ordinal)) return;
        if (((uint)values[names.IndexOf("MethodFlags")]! & MadeAtRunTime) != 0) return;
        lock (_guard) _addresses.Add((ulong)values[names.IndexOf("MethodID")]!);
    }

    // A method made at run time has no name to find it by; a pointer to a function is in no signature that the profile can write.
    private static bool CanBeNamed(MethodBase method) => method.DeclaringType is not null && method.GetType().Name != "DynamicMethod" && !method.GetType().Name.StartsWith("RTDynamic", StringComparison.Ordinal)
        && !method.GetParameters().Any(p => IsOfFunctions(p.ParameterType)) && !(method is MethodInfo { ReturnType: var returned } && IsOfFunctions(returned));

    private static bool IsOfFunctions(Type type) => type.IsFunctionPointer || type.HasElementType && IsOfFunctions(type.GetElementType()!);

    private static MethodBase? At(ulong address) =>
        MethodAt.Invoke(null, [InfoOf.Invoke(RuntimeMethodHandle.FromIntPtr((nint)address), null)]) as MethodBase;
}
