using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;

namespace CareRecords.StartProfile;

/// <summary>
/// Writes methods in the form in which the ahead-of-time compiler reads a profile: an assembly whose methods only name other methods, a method for each
/// set of assemblies, and one, AssemblyDictionary, that names these.
/// </summary>
internal sealed class ProfileFile
{
    private readonly MetadataBuilder _metadata = new();
    private readonly MethodBodyStreamEncoder _bodies = new(new BlobBuilder());
    private readonly Dictionary<string, AssemblyReferenceHandle> _assemblies = [];
    private readonly Dictionary<Type, EntityHandle> _types = [];

    /// <summary>Writes the file.</summary>
    public static void Write(IEnumerable<MethodBase> methods, string path)
    {
        var file = new ProfileFile();
        file.Fill(methods);
        var image = new BlobBuilder();
        new ManagedPEBuilder(PEHeaderBuilder.CreateLibraryHeader(), new MetadataRootBuilder(file._metadata), file._bodies.Builder,
            deterministicIdProvider: _ => new BlobContentId(Guid.Empty, 0)).Serialize(image);
        using var stream = File.Create(path);
        image.WriteContentTo(stream);
    }

    private void Fill(IEnumerable<MethodBase> methods)
    {
        _metadata.AddModule(0, _metadata.GetOrAddString("start"), _metadata.GetOrAddGuid(Guid.Empty), default, default);
        _metadata.AddAssembly(_metadata.GetOrAddString("start"), new Version(0, 0, 0, 0), default, default, default, AssemblyHashAlgorithm.None);
        _metadata.AddTypeDefinition(default, default, _metadata.GetOrAddString("<Module>"), default, MetadataTokens.FieldDefinitionHandle(1), MetadataTokens.MethodDefinitionHandle(1));
        var dictionary = new InstructionEncoder(new BlobBuilder());
        foreach (var group in methods.GroupBy(AssembliesOf, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            var named = new InstructionEncoder(new BlobBuilder());
            foreach (var method in group.OrderBy(m => $"{m.DeclaringType} {m}", StringComparer.Ordinal))
            {
                named.OpCode(ILOpCode.Ldtoken);
                named.Token(Handle(method));
                named.OpCode(ILOpCode.Pop);
            }

            dictionary.LoadString(_metadata.GetOrAddUserString(group.Key));
            dictionary.OpCode(ILOpCode.Ldtoken);
            dictionary.Token(Add("Group", named));
            dictionary.OpCode(ILOpCode.Pop);
        }

        Add("AssemblyDictionary", dictionary);
    }

    private MethodDefinitionHandle Add(string name, InstructionEncoder body)
    {
        body.OpCode(ILOpCode.Ret);
        var signature = new BlobBuilder();
        new BlobEncoder(signature).MethodSignature().Parameters(0, r => r.Void(), _ => { });
        return _metadata.AddMethodDefinition(MethodAttributes.Static | MethodAttributes.Public, MethodImplAttributes.IL, _metadata.GetOrAddString(name),
            _metadata.GetOrAddBlob(signature), _bodies.AddMethodBody(body), MetadataTokens.ParameterHandle(1));
    }

    /// <summary>The assembly of a method first, then those of its type arguments: the compiler takes a group only when it compiles them all.</summary>
    private static string AssembliesOf(MethodBase method)
    {
        var all = new SortedSet<string>(StringComparer.Ordinal);
        void Take(Type type)
        {
            if (type.HasElementType) Take(type.GetElementType()!);
            else if (!IsShared(type)) all.Add(type.Assembly.GetName().Name!);
            foreach (var argument in type.GetGenericArguments()) Take(argument);
        }

        Take(method.DeclaringType!);
        if (method.IsGenericMethod) foreach (var argument in method.GetGenericArguments()) Take(argument);
        var own = method.DeclaringType!.Assembly.GetName().Name!;
        return string.Join(';', all.Where(a => a != own).Prepend(own)) + ";";
    }

    private EntityHandle Handle(MethodBase method)
    {
        var open = method.Module.ResolveMethod(method.MetadataToken)!;
        var signature = new BlobBuilder();
        signature.WriteByte((byte)((open.IsStatic ? 0 : 0x20) | (open.IsGenericMethod ? 0x10 : 0)));
        if (open.IsGenericMethod) signature.WriteCompressedInteger(open.GetGenericArguments().Length);
        var parameters = open.GetParameters();
        signature.WriteCompressedInteger(parameters.Length);
        if (open is MethodInfo { ReturnParameter: { } returned }) Parameter(signature, returned);
        else signature.WriteByte((byte)SignatureTypeCode.Void);
        foreach (var parameter in parameters) Parameter(signature, parameter);
        var member = _metadata.AddMemberReference(Handle(method.DeclaringType!), _metadata.GetOrAddString(method.Name), _metadata.GetOrAddBlob(signature));
        if (!method.IsGenericMethod) return member;
        var arguments = new BlobBuilder();
        arguments.WriteByte((byte)SignatureKind.MethodSpecification);
        arguments.WriteCompressedInteger(method.GetGenericArguments().Length);
        foreach (var argument in method.GetGenericArguments()) Encode(arguments, argument);
        return _metadata.AddMethodSpecification(member, _metadata.GetOrAddBlob(arguments));
    }

    private void Parameter(BlobBuilder into, ParameterInfo parameter)
    {
        foreach (var modifier in parameter.GetRequiredCustomModifiers()) Modifier(into, SignatureTypeCode.RequiredModifier, modifier);
        foreach (var modifier in parameter.GetOptionalCustomModifiers()) Modifier(into, SignatureTypeCode.OptionalModifier, modifier);
        Encode(into, parameter.ParameterType);
    }

    private void Modifier(BlobBuilder into, SignatureTypeCode code, Type modifier)
    {
        into.WriteByte((byte)code);
        into.WriteCompressedInteger(CodedIndex.TypeDefOrRefOrSpec(Handle(modifier)));
    }

    private void Encode(BlobBuilder into, Type type)
    {
        if (type.IsByRef || type.IsPointer || type.IsSZArray)
        {
            into.WriteByte((byte)(type.IsByRef ? SignatureTypeCode.ByReference : type.IsPointer ? SignatureTypeCode.Pointer : SignatureTypeCode.SZArray));
            Encode(into, type.GetElementType()!);
        }
        else if (type.IsArray)
        {
            into.WriteByte((byte)SignatureTypeCode.Array);
            Encode(into, type.GetElementType()!);
            new ArrayShapeEncoder(into).Shape(type.GetArrayRank(), [], [.. Enumerable.Repeat(0, type.GetArrayRank())]);
        }
        else if (type.IsGenericParameter)
        {
            into.WriteByte((byte)(type.IsGenericMethodParameter ? SignatureTypeCode.GenericMethodParameter : SignatureTypeCode.GenericTypeParameter));
            into.WriteCompressedInteger(type.GenericParameterPosition);
        }
        else if (Primitive(type) is { } code) into.WriteByte((byte)code);
        else if (type.IsGenericType)
        {
            into.WriteByte((byte)SignatureTypeCode.GenericTypeInstance);
            Named(into, type.GetGenericTypeDefinition());
            into.WriteCompressedInteger(type.GetGenericArguments().Length);
            foreach (var argument in type.GetGenericArguments()) Encode(into, argument);
        }
        else Named(into, type);
    }

    private void Named(BlobBuilder into, Type type)
    {
        into.WriteByte((byte)(type.IsValueType ? SignatureTypeKind.ValueType : SignatureTypeKind.Class));
        into.WriteCompressedInteger(CodedIndex.TypeDefOrRefOrSpec(Reference(type)));
    }

    private EntityHandle Handle(Type type)
    {
        if (!type.IsConstructedGenericType) return Reference(type);
        if (_types.TryGetValue(type, out var known)) return known;
        var blob = new BlobBuilder();
        Encode(blob, type);
        return _types[type] = _metadata.AddTypeSpecification(_metadata.GetOrAddBlob(blob));
    }

    private EntityHandle Reference(Type type)
    {
        if (_types.TryGetValue(type, out var known)) return known;
        EntityHandle scope = type.DeclaringType is { } outer ? Reference(outer.IsGenericType ? outer.GetGenericTypeDefinition() : outer)
            : Reference(IsShared(type) ? "System.Private.Canon" : type.Assembly.GetName().Name!);
        return _types[type] = _metadata.AddTypeReference(scope, type.DeclaringType is null && type.Namespace is { } space ? _metadata.GetOrAddString(space) : default, _metadata.GetOrAddString(type.Name));
    }

    private AssemblyReferenceHandle Reference(string assembly)
    {
        if (_assemblies.TryGetValue(assembly, out var known)) return known;
        return _assemblies[assembly] = _metadata.AddAssemblyReference(_metadata.GetOrAddString(assembly), new Version(0, 0, 0, 0), default, default, default, default);
    }

    /// <summary>The type that stands for every class, where code is shared among them; the compiler looks for it under an assembly's name of its own.</summary>
    private static bool IsShared(Type type) => type.FullName == "System.__Canon";

    private static SignatureTypeCode? Primitive(Type type) =>
        type == typeof(void) ? SignatureTypeCode.Void
        : type == typeof(string) ? SignatureTypeCode.String
        : type == typeof(object) ? SignatureTypeCode.Object
        : type == typeof(nint) ? SignatureTypeCode.IntPtr
        : type == typeof(nuint) ? SignatureTypeCode.UIntPtr
        : type.IsEnum ? null
        : Type.GetTypeCode(type) switch
        {
            TypeCode.Boolean => SignatureTypeCode.Boolean,
            TypeCode.Char => SignatureTypeCode.Char,
            TypeCode.SByte => SignatureTypeCode.SByte,
            TypeCode.Byte => SignatureTypeCode.Byte,
            TypeCode.Int16 => SignatureTypeCode.Int16,
            TypeCode.UInt16 => SignatureTypeCode.UInt16,
            TypeCode.Int32 => SignatureTypeCode.Int32,
            TypeCode.UInt32 => SignatureTypeCode.UInt32,
            TypeCode.Int64 => SignatureTypeCode.Int64,
            TypeCode.UInt64 => SignatureTypeCode.UInt64,
            TypeCode.Single => SignatureTypeCode.Single,
            TypeCode.Double => SignatureTypeCode.Double,
            _ => null,
        };
}
